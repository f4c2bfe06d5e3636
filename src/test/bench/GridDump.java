import java.io.BufferedOutputStream;
import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.OutputStream;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.logging.LogManager;
import org.seacairn.InputException;
import org.seacairn.layer.Bathymetries;
import org.seacairn.layer.Bathymetry;
import org.seacairn.layer.CellUncertainty;
import org.seacairn.plan.PlanReader;
import org.seacairn.plan.SitingPlan.Edges;
import org.seacairn.plan.SitingPlan.LayerFile;

/**
 * What the bathymetry readers read, for {@code .ci/compare-grids} to hold against GDAL. A line of standard input is one question: grid, file to
 * write, CRS (may be empty), parted by tabs; a siting plan in place of a grid asks for its bathymetry, as soundings must be. Written are the values as
 * little-endian floats from the north-western cell on, then the uncertainties if there are any. Answered is the frame, a line each figure, notes, and "end"; or "refused".
 */
final class GridDump {
    private GridDump() {}

    public static void main(String[] none) throws IOException {
        // The library's remarks are no part of the answer.
        LogManager.getLogManager().reset();
        BufferedReader questions = new BufferedReader(new InputStreamReader(System.in, StandardCharsets.UTF_8));
        for (String line = questions.readLine(); line != null; line = questions.readLine()) {
            String[] question = (line + "\t").split("\t", -1);
            try (Bathymetry grid = open(question[0], question[2]);
                    OutputStream out = new BufferedOutputStream(Files.newOutputStream(Path.of(question[1])))) {
                write(grid, out);
                frame(grid).forEach(System.out::println);
            } catch (InputException e) {
                System.out.println("refused: " + e.getMessage().replaceAll("\\s+", " "));
            }
            System.out.println("end");
        }
    }

    private static Bathymetry open(String file, String crs) {
        Path path = Path.of(file);
        Optional<String> none = Optional.empty();
        return file.endsWith(".yaml") ? Bathymetries.open(PlanReader.read(path, true))
                : Bathymetries.open(new LayerFile("bathymetry", path, none, crs.isEmpty() ? none : Optional.of(crs), none, none, 1, Edges.GEODESIC));
    }

    private static void write(Bathymetry grid, OutputStream out) throws IOException {
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
                ByteBuffer bytes = ByteBuffer.allocate(Float.BYTES * values.length).order(ByteOrder.LITTLE_ENDIAN);
                bytes.asFloatBuffer().put(values);
                out.write(bytes.array());
            }
        }
    }

    private static List<String> frame(Bathymetry grid) {
        return List.of(String.valueOf(grid.cols()), String.valueOf(grid.rows()), String.valueOf(grid.west()), String.valueOf(grid.north()),
                String.valueOf(grid.cellWidth()), String.valueOf(grid.cellHeight()), grid.crs().wkt().replaceAll("\\s+", " "),
                grid.format() + (grid.statedUnit().isEmpty() ? "" : "; unit " + grid.statedUnit())
                        + (grid.statedDatum().isEmpty() ? "" : "; datum " + grid.statedDatum())
                        + grid.uncertainty().map(CellUncertainty::kind).map(kind -> "; " + kind).orElse("")
                        + String.join("", grid.notes().stream().map(note -> "; " + note).toList()));
    }
}
