package org.seacairn.export;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonGenerator;
import com.fasterxml.jackson.core.StreamWriteFeature;
import com.fasterxml.jackson.core.util.DefaultIndenter;
import com.fasterxml.jackson.core.util.DefaultPrettyPrinter;
import java.io.IOException;
import java.io.Writer;
import java.nio.file.Path;
import java.util.List;
import java.util.TreeSet;

/** {@code run.json}: where an output comes from, and which files belong to it. */
public final class RunJson {
    public static final String FILE_NAME = "run.json";
    static final String PROGRAM = "Seacairn";

    private RunJson() {}

    /**
     * Writes {@code run.json}. It lists every file of its folder, which is how the next run knows an
     * output of ours from what others have put beside it: write it last.
     *
     * @throws org.seacairn.InputException if the file cannot be written
     */
    public static void write(Path file, Run run) {
        OutputFile.text(file, out -> write(out, run, filesBeside(file)));
    }

    private static List<String> filesBeside(Path file) throws IOException {
        TreeSet<String> files = new TreeSet<>(FormerOutput.filesIn(file.toAbsolutePath().getParent()));
        files.add(file.getFileName().toString());
        return List.copyOf(files);
    }

    private static void write(Writer out, Run run, List<String> files) throws IOException {
        DefaultIndenter lines = new DefaultIndenter("  ", "\n");
        JsonFactory factory = JsonFactory.builder().disable(StreamWriteFeature.AUTO_CLOSE_TARGET).build();
        try (JsonGenerator json = factory.createGenerator(out)) {
            json.setPrettyPrinter(new DefaultPrettyPrinter().withObjectIndenter(lines).withArrayIndenter(lines));
            RecordJson records = new RecordJson(json, run.plan().file());
            json.writeStartObject();
            json.writeStringField("program", PROGRAM);
            json.writeFieldName("files");
            records.write(files);
            records.writeComponents(run);
            json.writeEndObject();
        }
        out.write('\n');
    }
}
