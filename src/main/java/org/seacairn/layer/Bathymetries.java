package org.seacairn.layer;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Supplier;
import java.util.stream.Stream;
import org.seacairn.InputException;
import org.seacairn.geodesy.Crs;
import org.seacairn.geodesy.CrsDomain;
import org.seacairn.plan.SitingPlan;
import org.seacairn.plan.SitingPlan.LayerFile;

/** Opens a bathymetry file with the reader of its format. One line a format. */
public final class Bathymetries {
    private Bathymetries() {}

    /**
     * Opens a grid; its cells are read later, window by window.
     *
     * @throws InputException if the file is missing, damaged, of an unknown format, rotated, or has no
     *     CRS while the plan states none
     */
    public static Bathymetry open(LayerFile source) {
        return open(source, OptionalDouble.empty());
    }

    private static Bathymetry open(LayerFile source, OptionalDouble cellM) {
        return onEarth(within(source.file(), () -> reader(source, cellM)));
    }

    private static Bathymetry reader(LayerFile source, OptionalDouble cellM) {
        Path file = source.file();
        String name = file.getFileName().toString();
        requireReadable(file);
        Optional<Crs> stated = source.crs().map(Crs::parse);
        String lower = name.toLowerCase(Locale.ROOT);
        if (isGeoTiff(lower)) {
            return GeoTiffBathymetry.open(file, stated);
        }
        if (isAsciiGrid(lower)) {
            return AsciiGridBathymetry.open(file, stated);
        }
        if (BagReader.takes(lower)) {
            return BagReader.open(file, stated, cellM);
        }
        if (NetCdfReader.takes(file, lower)) {
            return NetCdfReader.open(file, stated, source.table());
        }
        throw new InputException(name + ": no reader takes this file; bathymetry is read from GeoTIFF (.tif, .tiff),"
                + " Esri ASCII grid (.asc), BAG (.bag), NetCDF (.nc, .nc4, .grd) and soundings (.xyz, .txt, .csv)");
    }

    /**
     * Opens the plan's bathymetry; soundings are gridded on the plan's cell, and a grid of variable resolution is read as finely as that.
     *
     * @throws InputException as {@link #open(LayerFile)} does, or if the file says that its values count
     *     otherwise than the plan has it
     */
    public static Bathymetry open(SitingPlan plan) {
        LayerFile source = plan.bathymetry().source();
        requireReadable(source.file());
        boolean soundings = XyzReader.takes(source.file().getFileName().toString().toLowerCase(Locale.ROOT));
        return agreeing(soundings ? onEarth(within(source.file(), () -> XyzReader.open(plan))) : open(source, plan.cellM()), plan.bathymetry());
    }

    /** As {@link #open(LayerFile)}, held against what the plan says of its values. */
    static Bathymetry open(SitingPlan.Bathymetry plan) {
        return agreeing(open(plan.source()), plan);
    }

    /** What a bathymetry consists of: its file, and those beside it that are there and may be read with it. */
    public static List<Path> files(LayerFile source) {
        Path file = source.file();
        String lower = file.getFileName().toString().toLowerCase(Locale.ROOT);
        List<Path> beside = isGeoTiff(lower) ? GeoTiffBathymetry.beside(file)
                : isAsciiGrid(lower) && source.crs().isEmpty() ? AsciiGridBathymetry.prj(file).map(List::of).orElse(List.of()) : List.of();
        return Stream.concat(Stream.of(file), beside.stream()).toList();
    }

    private static boolean isGeoTiff(String lowerName) {
        return lowerName.endsWith(".tif") || lowerName.endsWith(".tiff");
    }

    private static boolean isAsciiGrid(String lowerName) {
        return lowerName.endsWith(".asc");
    }

    private static void requireReadable(Path file) {
        if (!Files.isReadable(file) || !Files.isRegularFile(file)) {
            throw new InputException(file.getFileName() + ": the file cannot be read; check the path and its permissions");
        }
        VectorLayers.requireContent(file, "the file");
    }

    /** A file may state more than memory holds; what was made of it until then is garbage by the time this is told. */
    private static Bathymetry within(Path file, Supplier<Bathymetry> opening) {
        try {
            return opening.get();
        } catch (OutOfMemoryError e) {
            throw VectorReader.problem(file, "the file", VectorLayers.MEMORY, e);
        }
    }

    private static Bathymetry onEarth(Bathymetry file) {
        try {
            requirePlace(file);
            return file;
        } catch (InputException e) {
            file.close();
            throw e;
        }
    }

    private static void requirePlace(Bathymetry file) {
        double x = file.west() + file.cols() / 2.0 * file.cellWidth();
        double y = file.north() - file.rows() / 2.0 * file.cellHeight();
        String label = file.crs().label();
        if (!CrsDomain.of(file.crs()).holds(x, y)) {
            throw VectorReader.problem(file.file(), "extent", "its middle, (" + x + ", " + y + "), is no place in " + label
                    + "; check the CRS that the file or the plan states, and its corner and cell");
        }
        double east = file.west() + file.cols() * file.cellWidth();
        double south = file.north() - file.rows() * file.cellHeight();
        // A survey of so few metres or feet at the very origin of its map is none.
        if (!file.crs().isGeographic() && CrsDomain.isLonLat(file.west(), file.north()) && CrsDomain.isLonLat(east, south)) {
            throw VectorReader.problem(file.file(), "extent", "from (" + file.west() + ", " + south + ") to (" + east + ", " + file.north()
                    + ") it looks like longitude and latitude while its CRS, " + label + ", counts in metres or feet; state its CRS in the plan beside"
                    + " the file, for example crs: EPSG:4326");
        }
    }

    private static Bathymetry agreeing(Bathymetry file, SitingPlan.Bathymetry plan) {
        try {
            file.requireAgreement(plan);
            return file;
        } catch (InputException e) {
            file.close();
            throw e;
        }
    }

    static InputException withoutCrs(Path file) {
        return new InputException(file.getFileName() + ": the file states no CRS; state it in the plan beside the"
                + " file, for example crs: EPSG:32617");
    }
}
