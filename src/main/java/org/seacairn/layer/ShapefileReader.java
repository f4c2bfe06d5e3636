package org.seacairn.layer;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import org.locationtech.jts.geom.Geometry;
import org.seacairn.InputException;
import org.seacairn.geodesy.Crs;
import org.seacairn.plan.SitingPlan.LayerFile;

/**
 * Reads a shapefile (ESRI Shapefile Technical Description, July 1998): the main file, and beside it, in
 * any letter case, the attributes (.dbf, .cpg) and the CRS (.prj). The index file (.shx) is not needed.
 * A feature's id is its record number, from 1.
 */
final class ShapefileReader implements VectorReader {
    private static final String DBF = ".dbf";
    private static final String CPG = ".cpg";
    private static final String PRJ = ".prj";

    @Override
    public String format() {
        return "shapefile";
    }

    @Override
    public List<String> extensions() {
        return List.of(".shp");
    }

    @Override
    public List<Path> files(Path file) {
        return Stream.concat(Stream.of(file), Stream.of(DBF, CPG, PRJ).flatMap(ending -> sidecar(file, ending).stream())
                .filter(Files::isRegularFile)).toList();
    }

    @Override
    public VectorLayer read(LayerFile source) {
        Path file = source.file();
        List<String> notes = new ArrayList<>();
        Crs crs = LayerCrs.choose(source, () -> crs(file), notes);
        List<Geometry> shapes = shapes(file, notes);
        List<Map<String, Object>> rows = rows(file, shapes.size(), notes);
        List<Feature> features = new ArrayList<>();
        int without = 0;
        int deleted = 0;
        for (int i = 0; i < shapes.size(); i++) {
            if (rows.get(i) == null) {
                deleted++;
            } else if (shapes.get(i) == null) {
                without++;
            } else {
                features.add(new Feature(i + 1L, shapes.get(i), rows.get(i)));
            }
        }
        if (deleted > 0) {
            notes.add(deleted + " records are marked as deleted and are left out");
        }
        return new VectorLayer(source.label(), file, format(), crs, source.edges(), List.copyOf(features), without, List.copyOf(notes));
    }

    private static List<Geometry> shapes(Path file, List<String> notes) {
        try (ShapeRecords records = new ShapeRecords(file)) {
            List<Geometry> shapes = new ArrayList<>();
            while (records.hasNext()) {
                shapes.add(records.next());
            }
            notes.addAll(records.notes());
            return shapes;
        } catch (IOException e) {
            throw VectorReader.problem(file, "main file", "cannot be read (" + e.getMessage() + "); check the file", e);
        }
    }

    private static List<Map<String, Object>> rows(Path file, int shapes, List<String> notes) {
        Optional<Path> dbf = sidecar(file, DBF);
        if (dbf.isEmpty()) {
            notes.add("there is no .dbf file beside it, so the features have no attributes");
            return Collections.nCopies(shapes, Map.of());
        }
        long rows = DbfTable.rows(SideFile.beside(file, dbf.get()));
        if (rows != shapes) {
            throw VectorReader.problem(file, "records", "has " + shapes + " shapes where " + dbf.get().getFileName() + " has "
                    + rows + " rows; the two files do not belong together, export the shapefile again");
        }
        DbfTable table = DbfTable.read(dbf.get(), sidecar(file, CPG));
        notes.addAll(table.notes());
        return table.rows();
    }

    private static Crs crs(Path file) {
        Path prj = sidecar(file, PRJ).orElseThrow(() -> VectorReader.problem(file, "CRS",
                "there is no .prj file beside it that states its CRS" + LayerCrs.REMEDY));
        try {
            // Not strict: an accent in a name must not keep the CRS from being read.
            String text = SideFile.text(file, prj, StandardCharsets.UTF_8);
            return crs(prj, text.replace("\ufeff", "").replaceAll("\\s+", " "));
        } catch (IOException e) {
            throw VectorReader.problem(prj, "text", "cannot be read (" + e.getMessage() + ")" + LayerCrs.REMEDY, e);
        }
    }

    private static Crs crs(Path prj, String text) {
        try {
            return LayerCrs.parse(text);
        } catch (InputException e) {
            throw VectorReader.problem(prj, "text", e.getMessage(), e);
        }
    }

    /** The file beside a main file with another ending, in any letter case; the plain spelling first. */
    private static Optional<Path> sidecar(Path file, String ending) {
        String name = file.getFileName().toString();
        String wanted = name.substring(0, name.length() - ending.length()) + ending;
        try (Stream<Path> beside = Files.list(file.toAbsolutePath().getParent())) {
            return beside.filter(path -> path.getFileName().toString().equalsIgnoreCase(wanted))
                    .min(Comparator.comparing((Path path) -> !path.getFileName().toString().equals(wanted)).thenComparing(path -> path));
        } catch (IOException e) {
            throw VectorReader.problem(file, ending, "its folder cannot be listed (" + e.getMessage() + "); check its permissions", e);
        }
    }
}
