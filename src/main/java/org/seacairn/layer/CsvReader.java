package org.seacairn.layer;

import java.io.IOException;
import java.io.StringReader;
import java.nio.file.Path;
import java.util.List;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.seacairn.geodesy.CoordinateText;
import org.seacairn.plan.SitingPlan.LayerFile;

/**
 * Reads points from delimited text (RFC 4180, also with semicolons or tabs) that has a header line.
 * Coordinates are longitude and latitude in any form of {@link CoordinateText}, on WGS 84 unless the plan
 * states another CRS, or easting and northing in the CRS that the plan states. Where the delimiter is no
 * comma, a comma may stand for the decimal point. All attributes are text, an empty one is null; the
 * apostrophe that an export put before {@code =} or the like is taken off. A feature's id is its row's place below the header, from 1, empty lines not counted.
 */
final class CsvReader implements VectorReader {
    private static final String SEPARATOR_LINE = "(?i)sep=[,;\t]\\s*";

    @Override
    public String format() {
        return "CSV";
    }

    @Override
    public List<String> extensions() {
        return List.of(".csv", ".txt");
    }

    @Override
    public VectorLayer read(LayerFile source) {
        Path file = source.file();
        DecodedText decoded = DecodedText.read(file);
        char delimiter = delimiter(file, decoded.text());
        CSVFormat format = CSVFormat.RFC4180.builder().setDelimiter(delimiter)
                .setIgnoreEmptyLines(false).setIgnoreSurroundingSpaces(true).build();
        try (CSVParser parser = CSVParser.parse(new StringReader(decoded.text()), format)) {
            return new CsvTable(source, parser, delimiter != ',').read(decoded.notes());
        } catch (IOException e) {
            throw VectorReader.problem(file, "text", "cannot be read (" + e.getMessage() + "); check the file", e);
        }
    }

    /** The delimiter that a line {@code sep=;} states, as spreadsheets write it, or else the one that occurs most often in the first line that is not empty, outside quotes. */
    private static char delimiter(Path file, String text) {
        String header = text.lines().filter(line -> !line.isBlank()).findFirst().orElseThrow(
                () -> VectorReader.problem(file, "line 1", "holds only empty lines; export it again with a header line"));
        if (header.matches(SEPARATOR_LINE)) {
            return header.strip().charAt(4);
        }
        String bare = header.replaceAll("\"[^\"]*\"", "");
        char best = ',';
        for (char candidate : new char[] {',', ';', '\t'}) {
            if (count(bare, candidate) > count(bare, best)) {
                best = candidate;
            }
        }
        return best;
    }

    private static long count(String text, char wanted) {
        return text.chars().filter(c -> c == wanted).count();
    }
}
