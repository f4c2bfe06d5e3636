package org.seacairn.layer;

import java.io.DataOutputStream;
import java.io.BufferedOutputStream;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import java.util.OptionalDouble;
import org.seacairn.InputException;
import org.seacairn.geodesy.Crs;
import org.seacairn.plan.SitingPlan.Edges;
import org.seacairn.plan.SitingPlan.LayerFile;

/**
 * Writes what a bathymetry reader reads, for {@code .ci/compare-grids} to hold against GDAL: the values as
 * little-endian floats from the north-western cell on, then the uncertainties if there are any; the frame to
 * standard output. Arguments: grid, file to write, CRS (optional, or empty), cell in metres to which a BAG of variable resolution
 * is read (optional).
 */
public final class GridDump {
    private GridDump() {}

    public static void main(String[] args) throws IOException {
        LayerFile source = new LayerFile("bathymetry", Path.of(args[0]), Optional.empty(),
                args.length > 2 && !args[2].isEmpty() ? Optional.of(args[2]) : Optional.empty(), Optional.empty(), Optional.empty(), 1, Edges.GEODESIC);
        try (Bathymetry grid = args.length > 3
                        ? BagReader.open(source.file(), source.crs().map(Crs::parse), OptionalDouble.of(Double.parseDouble(args[3])))
                        : Bathymetries.open(source);
                DataOutputStream out = new DataOutputStream(new BufferedOutputStream(Files.newOutputStream(Path.of(args[1]))))) {
            int rows = Math.max(1, Math.min(grid.rows(), Math.max(64, grid.blockRows())));
            for (int layer = 0; layer <= (grid.uncertainty().isPresent() ? 1 : 0); layer++) {
                for (int row = 0; row < grid.rows(); row += rows) {
                    int count = Math.min(rows, grid.rows() - row);
                    float[] values = new float[count * grid.cols()];
                    if (layer == 0) {
                        grid.read(0, row, grid.cols(), count, values);
                    } else {
                        grid.uncertainty().orElseThrow().read(0, row, grid.cols(), count, values);
                    }
                    ByteBuffer bytes = ByteBuffer.allocate(4 * values.length).order(ByteOrder.LITTLE_ENDIAN);
                    bytes.asFloatBuffer().put(values);
                    out.write(bytes.array());
                }
            }
            System.out.println(String.join("\n", String.valueOf(grid.cols()), String.valueOf(grid.rows()), String.valueOf(grid.west()),
                    String.valueOf(grid.north()), String.valueOf(grid.cellWidth()), String.valueOf(grid.cellHeight()),
                    String.valueOf(grid.uncertainty().isPresent()), grid.crs().wkt().replaceAll("\\s+", " "), grid.crs().label(),
                    grid.format() + "; unit " + grid.statedUnit() + "; datum " + grid.statedDatum() + "; "
                    + grid.uncertainty().map(CellUncertainty::kind).orElse("")));
            grid.notes().forEach(System.out::println);
        } catch (InputException e) {
            System.out.println("refused: " + e.getMessage());
        }
    }
}
