package org.seacairn.report;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.Base64;
import java.util.List;
import java.util.Locale;
import org.seacairn.export.Cautions;
import org.seacairn.export.OutputFile;

/**
 * A report: one file that opens from disk and asks nothing of the network. It is whole without its script, which
 * adds only how the map moves and how tables are sorted. A content security policy lets nothing in from outside.
 *
 * @param title of the plan
 * @param subject what the page tells of, for example {@code Ranked sites}
 * @param version of Seacairn
 */
public record Page(String title, String subject, String version, List<Section> sections) {
    public static final String FILE_NAME = "report.html";
    private static final String STYLE = "/report/page.css";
    private static final String MAP_STYLE = "/report/map.css";
    private static final String SCRIPT = "/report/page.js";

    public Page {
        sections = List.copyOf(sections);
    }

    /** @throws org.seacairn.InputException if the file cannot be written */
    public void write(Path file) {
        String html = html();
        OutputFile.text(file, out -> out.write(html));
    }

    /** The whole page. */
    public String html() {
        String script = resource(SCRIPT);
        Html html = new Html();
        html.ready("<!DOCTYPE html>\n").open("html", "lang", "en").newLine();
        head(html, script);
        html.open("body").newLine();
        html.element("a", "Skip to the content", "class", "skip", "href", "#content").newLine();
        header(html);
        contents(html);
        html.open("main", "id", "content", "tabindex", "-1").newLine();
        sections.forEach(section -> section(html, section));
        html.close("main").newLine();
        html.open("footer").element("p", "Seacairn " + version + ". " + sentence(Cautions.SHORT)).close("footer").newLine();
        if (!script.isEmpty()) {
            html.open("script").ready(script).close("script").newLine();
        }
        return html.close("body").newLine().close("html").newLine().done();
    }

    /** The header and the sections alone, well-formed XML: {@link PaperDocument} adds what paper needs. */
    String paperMarkup() {
        Html html = new Html();
        html.open("html", "lang", "en").open("body").newLine();
        html.element("div", sentence(Cautions.SHORT), "class", "running").newLine();
        header(html);
        html.open("main").newLine();
        sections.forEach(section -> section(html, section));
        return html.close("main").close("body").close("html").done();
    }

    /** What a window or a reader's list calls the page. */
    String headTitle() {
        return Html.cut(title, Html.LONGEST_NAME) + " – " + subject + " – Seacairn";
    }

    private void head(Html html, String script) {
        html.open("head").newLine();
        html.empty("meta", "charset", "UTF-8").newLine();
        html.empty("meta", "http-equiv", "Content-Security-Policy", "content", policy(script)).newLine();
        html.empty("meta", "name", "referrer", "content", "no-referrer").newLine();
        html.empty("meta", "name", "viewport", "content", "width=device-width, initial-scale=1").newLine();
        html.element("title", headTitle()).newLine();
        html.open("style").ready("\n" + resource(STYLE) + resource(MAP_STYLE) + onEveryPrintedPage()).close("style").newLine();
        html.close("head").newLine();
    }

    private static String policy(String script) {
        return "default-src 'none'; img-src data:; style-src 'unsafe-inline'; base-uri 'none'; form-action 'none'"
                + (script.isEmpty() ? "" : "; script-src 'sha256-" + sha256(script) + "'");
    }

    /** The caution at the foot of every sheet, where the browser knows page margin boxes (CSS Paged Media, section 4.2). */
    private static String onEveryPrintedPage() {
        return "@page { @bottom-left { content: \"" + sentence(Cautions.SHORT) + "\"; } }\n";
    }

    private static String sentence(String text) {
        return text.substring(0, 1).toUpperCase(Locale.ROOT) + text.substring(1) + ".";
    }

    private void header(Html html) {
        html.open("header").newLine();
        html.open("h1").name(title).close("h1").newLine();
        html.element("p", subject, "class", "subject").newLine();
        html.open("div", "class", "cautions", "role", "note", "aria-label", "Cautions").open("ul").newLine();
        Cautions.LINES.forEach(line -> html.element("li", line).newLine());
        html.close("ul").close("div").newLine();
        html.close("header").newLine();
    }

    private void contents(Html html) {
        html.open("nav", "aria-label", "Contents").open("ul").newLine();
        for (Section section : sections) {
            html.open("li").element("a", section.heading(), "href", "#" + section.id()).close("li").newLine();
        }
        html.close("ul").close("nav").newLine();
    }

    private static void section(Html html, Section section) {
        String headingId = section.id() + "-heading";
        html.open("section", "id", section.id(), "aria-labelledby", headingId).newLine();
        html.element("h2", section.heading(), "id", headingId).newLine();
        section.write(html);
        html.close("section").newLine();
    }

    /** A text that is built in; empty where there is none. */
    static String resource(String name) {
        try (InputStream in = Page.class.getResourceAsStream(name)) {
            return in == null ? "" : new String(in.readAllBytes(), StandardCharsets.UTF_8);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static String sha256(String script) {
        try {
            return Base64.getEncoder().encodeToString(
                    MessageDigest.getInstance("SHA-256").digest(script.getBytes(StandardCharsets.UTF_8)));
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException(e);
        }
    }
}
