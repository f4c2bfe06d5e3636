package org.seacairn.layer;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Collectors;
import org.seacairn.InputException;
import org.seacairn.geodesy.Crs;
import org.seacairn.plan.SitingPlan.LayerFile;
import org.seacairn.plan.Suggestion;

/**
 * Reads one object class of an electronic navigational chart (ENC): IHO S-57 edition 3.1 in ISO/IEC 8211, with the updates
 * beside it. Coordinates are longitude and latitude on WGS 84. A feature's id is its record number (RCID); soundings, which
 * come many in a record, are points of their own with the attribute {@code DEPTH}, numbered from 1 in the order of the file.
 *
 * <p>Section numbers of the standard in the classes of this reader are from memory; what they do is judged by GDAL on real
 * charts ({@code .ci/check-charts}).
 */
final class S57Reader implements VectorReader {
    /**
     * A chart has at most 5 MB (S-57 appendix B.1, from memory); what is much larger is none. A file of nothing but empty
     * attributes takes 40 times its size in memory, any other far less.
     */
    private static final int MOST_BYTES = 16 << 20;
    private static final int CLASSES_TOLD = 100;
    /** Geometries share edges, so they have more vertices than the file, but not more than it has bytes; small files a few. */
    private static final int VERTICES_OF_ANY_CHART = 100_000;

    @Override
    public String format() {
        return "S-57 chart";
    }

    @Override
    public List<String> extensions() {
        return List.of(S57Updates.CHART);
    }

    @Override
    public boolean takes(Path file) {
        if (VectorReader.super.takes(file)) {
            return true;
        }
        if (!Files.isRegularFile(file)) {
            return false;
        }
        try (InputStream in = Files.newInputStream(file)) {
            return Iso8211File.isBegunBy(in.readNBytes(Iso8211Leader.LENGTH));
        } catch (IOException e) {
            return false;
        }
    }

    @Override
    public boolean hasTables() {
        return true;
    }

    /** With all updates beside the chart, those that it holds already among them. */
    @Override
    public List<Path> files(Path file) {
        List<Path> files = new ArrayList<>(List.of(file));
        files.addAll(S57Updates.beside(file, 0).values());
        return files;
    }

    @Override
    public VectorLayer read(LayerFile source) {
        Path file = source.file();
        byte[] bytes = bytes(file);
        S57File chart = new S57File(file, bytes);
        if (chart.dataSet().update()) {
            throw VectorReader.problem(file, "field DSID", "is update " + chart.dataSet().number() + " of a chart; name the chart's own file, whose name ends in "
                    + S57Updates.CHART);
        }
        List<String> notes = new ArrayList<>();
        S57Cell cell = chart.read();
        List<Path> applied = new ArrayList<>();
        S57DataSet newest = S57Updates.apply(file, chart.dataSet(), cell, applied);
        notes.add(state(newest, cell.parameters(), applied));
        Crs crs = LayerCrs.choose(source, () -> crs(file, cell.parameters()), notes);
        if (cell.parameters().depthUnit() != S57Parameters.METRES) {
            notes.add("depths are not in metres (DUNI " + cell.parameters().depthUnit() + ")");
        }
        List<S57Feature> chosen = choose(source, cell);
        List<Feature> features = new ArrayList<>();
        S57Geometry geometry = new S57Geometry(cell, bytes.length + (long) VERTICES_OF_ANY_CHART);
        for (S57Feature feature : chosen) {
            if (feature.hasPlace()) {
                add(feature, geometry, features);
            }
        }
        int without = (int) chosen.stream().filter(feature -> !feature.hasPlace()).count();
        return new VectorLayer(source.label(), file, format(), crs, source.edges(), List.copyOf(features), without, List.copyOf(notes));
    }

    /** All bytes of a chart or an update. */
    static byte[] bytes(Path file) {
        try (InputStream in = Files.newInputStream(file)) {
            byte[] bytes = in.readNBytes(MOST_BYTES + 1);
            if (bytes.length > MOST_BYTES) {
                throw VectorReader.problem(file, "the file", "is larger than 16 MiB, and no chart is; check the file");
            }
            return bytes;
        } catch (IOException e) {
            throw VectorReader.problem(file, "the file", "cannot be read (" + e.getMessage() + "); check the file", e);
        }
    }

    private static String state(S57DataSet newest, S57Parameters parameters, List<Path> applied) {
        return "edition " + newest.edition() + ", update " + newest.number() + (!newest.issued().matches("[0-9]{8}") ? "" : ", issued " + newest.issued())
                + (parameters.compilationScale() > 0 ? ", compiled at 1:" + parameters.compilationScale() : "") + "; "
                + (applied.isEmpty() ? "no later update lies beside it" : S57Updates.shown(applied, newest) + " beside it applied");
    }

    private static Crs crs(Path file, S57Parameters parameters) {
        if (!parameters.degrees() || parameters.horizontalDatum() != S57Parameters.WGS_84) {
            throw VectorReader.problem(file, "field DSPM", parameters.degrees() ? "its horizontal datum is number " + parameters.horizontalDatum()
                    + " of S-57 and not WGS 84 (2)" + LayerCrs.REMEDY : "its coordinates are no longitude and latitude" + LayerCrs.REMEDY);
        }
        return Crs.WGS84;
    }

    private static List<S57Feature> choose(LayerFile source, S57Cell cell) {
        Map<String, List<S57Feature>> byClass = new TreeMap<>(cell.features().values().stream()
                .collect(Collectors.groupingBy(feature -> S57Catalogue.objectClass(feature.objectClass()))));
        String place = "layer \"" + source.label() + "\"";
        String held = byClass.entrySet().stream().filter(e -> e.getValue().stream().anyMatch(S57Feature::hasPlace))
                .limit(CLASSES_TOLD).map(e -> e.getKey() + " (" + e.getValue().size() + ")").collect(Collectors.joining(", "));
        if (source.table().isEmpty()) {
            throw VectorReader.problem(source.file(), place, "is a chart with many object classes; name one as \"class\" (of the bottom as \"object-class\", of a proposal with --table), from " + held);
        }
        String wanted = source.table().get();
        List<S57Feature> chosen = byClass.get(wanted.strip().toUpperCase(Locale.ROOT));
        if (chosen == null) {
            throw unknown(source, place, byClass, wanted, held);
        }
        return Collections.unmodifiableList(chosen);
    }

    private static InputException unknown(LayerFile source, String place, Map<String, List<S57Feature>> byClass, String wanted, String held) {
        return VectorReader.problem(source.file(), place, "the chart has no feature of object class \"" + wanted + "\""
                + Suggestion.nearest(wanted, byClass.keySet()).map(near -> " (did you mean \"" + near + "\"?)").orElse("")
                + "; name one from " + held + ", or leave the layer out of the plan");
    }

    private static void add(S57Feature feature, S57Geometry geometry, List<Feature> into) {
        Map<String, Object> attributes = Collections.unmodifiableMap(S57Attributes.of(feature));
        if (!geometry.isSoundings(feature)) {
            into.add(new Feature(feature.name().number(), geometry.of(feature), attributes));
            return;
        }
        for (S57Geometry.Sounding sounding : geometry.soundings(feature)) {
            Map<String, Object> own = new LinkedHashMap<>(attributes);
            own.put(S57Attributes.DEPTH, sounding.depth());
            into.add(new Feature(into.size() + 1L, sounding.place(), Collections.unmodifiableMap(own)));
        }
    }
}
