package org.seacairn.layer;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import java.util.stream.DoubleStream;
import org.seacairn.InputException;
import org.seacairn.geodesy.Crs;
import org.seacairn.plan.SitingPlan.Values;

/**
 * Bathymetry from a NetCDF grid by the CF conventions 1.11: coordinate variables of one dimension, evenly spaced
 * centres of cells in either order, packed values, a grid mapping. NetCDF-4 and the classic formats.
 */
final class NetCdfReader {
    /** What NetCDF fills with where a file states no fill, by bytes of a signed integer (netcdf.h). */
    private static final double FILL_SHORT = -32767;
    private static final double FILL_INT = -2147483647;
    private static final double FILL_REAL = 9.9692099683868690e+36;

    private final NetCdfFile source;
    private final Path file;

    private NetCdfReader(NetCdfFile source) {
        this.source = source;
        this.file = source.file();
    }

    static boolean takes(Path file, String lowerName) {
        return lowerName.endsWith(".nc") || lowerName.endsWith(".nc4") || lowerName.endsWith(".cdf")
                || lowerName.endsWith(".grd") && (isClassic(file) || isHdf(file));
    }

    static boolean isClassic(Path file) {
        byte[] start = start(file);
        return start.length >= 4 && start[0] == 'C' && start[1] == 'D' && start[2] == 'F';
    }

    static boolean isHdf(Path file) {
        byte[] start = start(file);
        return start.length >= 4 && start[1] == 'H' && start[2] == 'D' && start[3] == 'F';
    }

    private static byte[] start(Path file) {
        try (InputStream in = Files.newInputStream(file)) {
            return in.readNBytes(8);
        } catch (IOException e) {
            throw new InputException(file.getFileName() + ": the file cannot be read (" + e.getMessage() + "); check its permissions", e);
        }
    }

    /**
     * @param stated CRS of the plan, which overrides the file's
     * @param variable name of the grid in the file, or empty: the only one, or one called elevation
     */
    static Bathymetry open(Path file, Optional<Crs> stated, Optional<String> variable) {
        NetCdfFile source = isClassic(file) ? ClassicNetCdf.open(file) : new HdfNetCdf(file);
        try {
            NetCdfReader reader = new NetCdfReader(source);
            return reader.grid(reader.choose(variable), stated);
        } catch (RuntimeException e) {
            try {
                source.close();
            } catch (IOException suppressed) {
                e.addSuppressed(suppressed);
            }
            throw e;
        }
    }

    private NetCdfVariable choose(Optional<String> name) {
        List<NetCdfVariable> grids = source.variables().values().stream().filter(v -> v.isGrid() && !v.text("grid_mapping").equals(v.name())
                && !v.attributes().containsKey("flag_values") && !v.attributes().containsKey("flag_masks")).toList();
        String names = grids.stream().map(v -> XmlElements.shown(v.name())).limit(8).collect(Collectors.joining(", "));
        if (name.isPresent()) {
            return source.variables().values().stream().filter(v -> v.name().equals(name.get()) && v.isGrid()).findFirst()
                    .orElseThrow(() -> VectorReader.problem(file, "variables", "has no grid named \"" + name.get() + "\"; choose among: " + names));
        }
        if (grids.size() == 1) {
            return grids.get(0);
        }
        return grids.stream().filter(v -> v.name().equals("elevation")).findFirst().orElseThrow(() -> VectorReader.problem(file, "variables",
                grids.isEmpty() ? "holds no grid of numbers over two dimensions; name a file that does"
                        : "holds several grids; name one with \"table\" beside the file: " + names));
    }

    private StoredGrid grid(NetCdfVariable grid, Optional<Crs> stated) {
        if (isCoordinate(grid.xAxis(), NetCdfVariable::isY) || isCoordinate(grid.yAxis(), NetCdfVariable::isX)) {
            throw VectorReader.problem(file, grid.name(), "runs along " + grid.yAxis() + " first and " + grid.xAxis()
                    + " last; write it again with rows along the latitude or northing");
        }
        NetCdfVariable xs = coordinate(grid, grid.xAxis(), grid.shape()[grid.shape().length - 1], NetCdfVariable::isX);
        NetCdfVariable ys = coordinate(grid, grid.yAxis(), grid.shape()[grid.shape().length - 2], NetCdfVariable::isY);
        Crs crs = stated.orElseGet(() -> crs(grid));
        CfAxis x = CfAxis.of(file, xs).times(unit(xs, crs));
        CfAxis y = CfAxis.of(file, ys).times(unit(ys, crs));
        if (x.step() < 0) {
            throw VectorReader.problem(file, xs.name(), "runs from east to west; write it again from west to east");
        }
        List<String> notes = new ArrayList<>();
        double west = crs.isGeographic() ? longitude(xs, x, notes) : x.low();
        if (crs.isGeographic() && !(Math.abs(y.first()) <= 90 && Math.abs(y.last()) <= 90)) {
            throw VectorReader.problem(file, ys.name(), "runs from " + CfAxis.shown(y.first()) + " to " + CfAxis.shown(y.last())
                    + " degrees of latitude; check the file, or state crs in the plan if these are no degrees");
        }
        return new StoredGrid(file, source.format() + ", variable " + grid.name(), crs, west, y.high(), x.step(), Math.abs(y.step()),
                y.step() > 0, grid.array().get(), packing(grid), grid.text("units"), sense(grid), "", Optional.empty(),
                List.copyOf(notes), source);
    }

    private boolean isCoordinate(String name, Predicate<NetCdfVariable> kind) {
        NetCdfVariable variable = source.variables().get(name);
        return variable != null && kind.test(variable);
    }

    private NetCdfVariable coordinate(NetCdfVariable grid, String axis, int length, Predicate<NetCdfVariable> kind) {
        Predicate<NetCdfVariable> fits = v -> v.shape().length == 1 && v.shape()[0] == length && v.number().isPresent();
        NetCdfVariable named = source.variables().get(axis);
        if (named != null && fits.test(named)) {
            return named;
        }
        List<NetCdfVariable> likely = axis.isEmpty() ? source.variables().values().stream().filter(fits.and(kind)).toList() : List.of();
        if (likely.size() != 1) {
            throw VectorReader.problem(file, grid.name(), "has no coordinates of one dimension for its " + length + " cells"
                    + (axis.isEmpty() ? "" : " along " + axis) + "; write it as a CF grid with coordinate variables");
        }
        return likely.get(0);
    }

    private Crs crs(NetCdfVariable grid) {
        NetCdfVariable mapping = CfCrs.mappingName(grid).map(source.variables()::get).orElseThrow(() -> Bathymetries.withoutCrs(file));
        try {
            return CfCrs.of(mapping);
        } catch (InputException e) {
            throw VectorReader.problem(file, mapping.name(), e.getMessage(), e);
        }
    }

    /** What one unit of a coordinate is in units of the CRS. */
    private double unit(NetCdfVariable axis, Crs crs) {
        String units = axis.text("units");
        boolean degrees = units.toLowerCase(java.util.Locale.ROOT).startsWith("degree");
        OptionalDouble metres = UnitName.metres(units);
        if (degrees && !crs.isGeographic() || metres.isPresent() && crs.isGeographic()) {
            throw VectorReader.problem(file, axis.name(), "is in \"" + XmlElements.shown(units) + "\", and the CRS is " + crs.label()
                    + "; state in the plan the crs that the coordinates are in");
        }
        return crs.isGeographic() || metres.isEmpty() ? 1 : metres.getAsDouble() / crs.metresPerUnit();
    }

    /** The western edge, with longitudes beyond 180 degrees counted from the other side. */
    private double longitude(NetCdfVariable axis, CfAxis x, List<String> notes) {
        double west = x.low();
        double turns = 360 * Math.floor((x.first() + 180) / 360);
        if (!(Math.abs(x.first()) <= 720) || x.high() - west > 360 + x.step() * 1.5) {
            throw VectorReader.problem(file, axis.name(), "runs from " + CfAxis.shown(x.first()) + " to " + CfAxis.shown(x.last())
                    + " degrees of longitude; check the file, or state crs in the plan if these are no degrees");
        }
        // A grid of the whole Earth whose cells stand on lines reaches half a cell over; that is no crossing.
        if (x.last() - turns > 180 + x.step() / 2) {
            throw VectorReader.problem(file, axis.name(), "runs from " + CfAxis.shown(x.first()) + " to " + CfAxis.shown(x.last())
                    + " degrees and so across the antimeridian; cut the grid there and use one part");
        }
        if (turns != 0) {
            notes.add("longitudes from " + CfAxis.shown(x.first()) + " to " + CfAxis.shown(x.last()) + " degrees are counted from "
                    + CfAxis.shown(x.first() - turns));
        }
        return west - turns;
    }

    private static Optional<Values> sense(NetCdfVariable grid) {
        String positive = grid.text("positive").toLowerCase(java.util.Locale.ROOT);
        String standard = grid.text("standard_name");
        if (positive.equals("down") || positive.isEmpty() && standard.contains("depth")) {
            return Optional.of(Values.DEPTH);
        }
        boolean height = standard.contains("altitude") || standard.contains("height");
        return positive.equals("up") || positive.isEmpty() && height ? Optional.of(Values.ELEVATION) : Optional.empty();
    }

    private Packing packing(NetCdfVariable grid) {
        StoredNumber number = grid.number().orElseThrow();
        double[] fill = grid.numbers("_FillValue");
        double[] missing = DoubleStream.concat(Arrays.stream(fill.length > 0 ? fill : usualFill(number)),
                Arrays.stream(grid.numbers("missing_value"))).toArray();
        double[] range = grid.numbers("valid_range");
        double least = range.length == 2 ? range[0] : grid.number("valid_min", Double.NEGATIVE_INFINITY);
        double greatest = range.length == 2 ? range[1] : grid.number("valid_max", Double.POSITIVE_INFINITY);
        double scale = grid.number("scale_factor", 1);
        double offset = grid.number("add_offset", 0);
        if (!Double.isFinite(scale) || scale == 0 || !Double.isFinite(offset)) {
            throw VectorReader.problem(file, grid.name(), "is packed with scale_factor " + scale + " and add_offset " + offset
                    + "; the file is damaged, get it again");
        }
        if (number.form() == StoredNumber.Form.FLOAT && number.bytes() == 4) {
            // A limit written in 8 bytes means the number that 4 bytes can hold.
            missing = Arrays.stream(missing).map(v -> (float) v).toArray();
            least = (float) least;
            greatest = (float) greatest;
        }
        return new Packing(scale, offset, missing, least, greatest);
    }

    private static double[] usualFill(StoredNumber number) {
        if (number.form() == StoredNumber.Form.FLOAT) {
            return new double[] {FILL_REAL};
        }
        boolean signed = number.form() == StoredNumber.Form.SIGNED;
        return switch (number.bytes()) {
            case 2 -> new double[] {signed ? FILL_SHORT : 65535};
            case 4 -> new double[] {signed ? FILL_INT : 4294967295.0};
            default -> new double[0];
        };
    }
}
