package org.seacairn.report;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Properties;

/** The accessibility rules of axe-core, as a script to be run in a page. */
final class Axe {
    private static final String WEBJAR = "org.webjars.npm/axe-core/pom.properties";

    /**
     * What a rule found wrong.
     *
     * @param rule its id, such as {@code image-alt}
     * @param impact minor, moderate, serious or critical; {@code null} only where axe cannot tell
     * @param help what is wrong, in a sentence
     * @param elements a selector of each element at fault
     */
    record Fault(String rule, String impact, String help, List<String> elements) {}

    /** WCAG 2.0 and 2.1 to level AA, the level AA rules of 2.2 that this axe knows, and its advice on good practice. */
    static final String RUN = """
            axe.run(document, {
              runOnly: ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'],
              rules: { 'target-size': { enabled: true } },
              resultTypes: ['violations'],
              preload: false
            }).then(found => found.violations.map(v => ({
              rule: v.id, impact: v.impact, help: v.help, elements: v.nodes.map(n => n.target.flat().join(' '))
            })))""";

    private Axe() {}

    static String source() {
        try {
            Properties webjar = new Properties();
            try (InputStream in = resource("META-INF/maven/" + WEBJAR)) {
                webjar.load(in);
            }
            String version = webjar.getProperty("version");
            try (InputStream in = resource("META-INF/resources/webjars/axe-core/" + version + "/axe.min.js")) {
                return new String(in.readAllBytes(), StandardCharsets.UTF_8);
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static InputStream resource(String name) throws IOException {
        InputStream in = Axe.class.getClassLoader().getResourceAsStream(name);
        if (in == null) {
            throw new IOException("not on the class path: " + name);
        }
        return in;
    }

    static List<Fault> read(JsonValue found) {
        return found.items().stream().map(fault -> new Fault(fault.get("rule").text(),
                fault.get("impact").isNull() ? null : fault.get("impact").text(), fault.get("help").text(),
                fault.get("elements").texts())).toList();
    }
}
