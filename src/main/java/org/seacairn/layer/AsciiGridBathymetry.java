package org.seacairn.layer;

import java.io.BufferedInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import org.seacairn.InputException;
import org.seacairn.geodesy.Crs;

/**
 * Bathymetry from an Esri ASCII grid, held in memory as a whole (the format allows no window).
 * Takes {@code cellsize} or {@code dx}/{@code dy}, corner or centre, any layout of the values over
 * lines, and decimal points or commas. The CRS comes from the plan or from a {@code .prj} beside it.
 * Parsed here and not by a library, because the one at hand names no place in its errors and does
 * not know {@code dx}/{@code dy}.
 */
final class AsciiGridBathymetry implements Bathymetry {
    private static final int MOST_CELLS = 1 << 28;
    private static final List<String> HEADER = List.of("ncols", "nrows", "xllcorner", "yllcorner", "xllcenter", "yllcenter",
            "cellsize", "dx", "dy", "nodata_value");

    private final Path file;
    private final Crs crs;
    private final int cols;
    private final int rows;
    private final double west;
    private final double south;
    private final double cellWidth;
    private final double cellHeight;
    private final float[] values;

    private AsciiGridBathymetry(Path file, Optional<Crs> stated, Tokens tokens) throws IOException {
        this.file = file;
        Map<String, Double> header = new HashMap<>();
        String token = tokens.next();
        while (token != null && Character.isLetter(token.charAt(0)) && !token.equalsIgnoreCase("nan")) {
            String word = token.toLowerCase(Locale.ROOT);
            if (!HEADER.contains(word)) {
                throw new InputException(name() + ", line " + tokens.line() + ": \"" + token + "\" is no header word of an"
                        + " Esri ASCII grid known here (" + String.join(", ", HEADER) + "); delete the line if it changes nothing");
            }
            header.put(word, tokens.number(tokens.next()));
            token = tokens.next();
        }
        this.cols = count(header, "ncols");
        this.rows = count(header, "nrows");
        if ((long) cols * rows > MOST_CELLS) {
            throw new InputException(name() + ": the header promises " + (long) cols * rows
                    + " cells, more than an ASCII grid may hold here (" + MOST_CELLS + "); convert it to GeoTIFF");
        }
        this.cellWidth = positive(header, header.containsKey("cellsize") ? "cellsize" : "dx");
        this.cellHeight = positive(header, header.containsKey("cellsize") ? "cellsize" : "dy");
        this.west = header.containsKey("xllcenter") ? required(header, "xllcenter") - cellWidth / 2 : required(header, "xllcorner");
        this.south = header.containsKey("yllcenter") ? required(header, "yllcenter") - cellHeight / 2 : required(header, "yllcorner");
        double noData = header.getOrDefault("nodata_value", -9999.0);
        long promised = (long) cols * rows;
        // A value and its separator take two bytes at least: an honest header never promises more.
        if (promised > Files.size(file)) {
            throw new InputException(name() + ": the header promises " + promised + " values, but the file has only "
                    + Files.size(file) + " bytes; it is cut short, get it again");
        }
        this.values = new float[(int) promised];
        for (int i = 0; i < values.length; i++) {
            if (token == null) {
                throw new InputException(name() + ", line " + tokens.line() + ": the file ends after " + i + " of "
                        + values.length + " values; it is cut short, get it again");
            }
            double v = tokens.number(token);
            values[i] = v == noData || !Float.isFinite((float) v) ? Float.NaN : (float) v;
            token = tokens.next();
        }
        if (token != null) {
            throw new InputException(name() + ", line " + tokens.line() + ": more values than the header promises ("
                    + values.length + "); check ncols and nrows");
        }
        this.crs = stated.isPresent() ? stated.get() : crsBeside(file);
    }

    static AsciiGridBathymetry open(Path file, Optional<Crs> stated) {
        try (InputStream in = new BufferedInputStream(Files.newInputStream(file), 1 << 16)) {
            return new AsciiGridBathymetry(file, stated, new Tokens(file, in));
        } catch (IOException e) {
            throw new InputException(file.getFileName() + ": the file cannot be read (" + e.getMessage() + ")", e);
        }
    }

    /** The file that states the CRS, unless the plan does. */
    static Optional<Path> prj(Path file) {
        String base = file.getFileName().toString().replaceFirst("\\.[^.]*$", "");
        return Stream.of(".prj", ".PRJ").map(ending -> file.resolveSibling(base + ending)).filter(Files::isRegularFile).findFirst();
    }

    private static Crs crsBeside(Path file) throws IOException {
        Path prj = prj(file).orElseThrow(() -> Bathymetries.withoutCrs(file));
        String text = SideFile.text(file, prj, StandardCharsets.UTF_8).replace("\uFEFF", "");
        try {
            return Crs.parse(text);
        } catch (InputException e) {
            throw new InputException(prj.getFileName() + ": " + e.getMessage(), e);
        }
    }

    private String name() {
        return file.getFileName().toString();
    }

    private double required(Map<String, Double> header, String key) {
        Double value = header.get(key);
        if (value != null && !Double.isFinite(value)) {
            throw new InputException(name() + ", header: " + key + " is " + value + "; it must be a number");
        }
        if (value == null) {
            throw new InputException(name() + ", header: " + key + " is missing; an Esri ASCII grid begins with ncols,"
                    + " nrows, xllcorner, yllcorner, cellsize");
        }
        return value;
    }

    private double positive(Map<String, Double> header, String key) {
        double value = required(header, key);
        if (value <= 0) {
            throw new InputException(name() + ", header: " + key + " is " + value + "; it must be above 0");
        }
        return value;
    }

    private int count(Map<String, Double> header, String key) {
        double value = positive(header, key);
        if (value != Math.rint(value) || value > Integer.MAX_VALUE) {
            throw new InputException(name() + ", header: " + key + " is " + value + "; it must be a whole number");
        }
        return (int) value;
    }

    @Override
    public void read(int col, int row, int cols, int rows, float[] into) {
        for (int r = 0; r < rows; r++) {
            System.arraycopy(values, (row + r) * this.cols + col, into, r * cols, cols);
        }
    }

    @Override
    public Path file() {
        return file;
    }

    @Override
    public String format() {
        return "Esri ASCII grid";
    }

    @Override
    public Crs crs() {
        return crs;
    }

    @Override
    public int cols() {
        return cols;
    }

    @Override
    public int rows() {
        return rows;
    }

    @Override
    public double west() {
        return west;
    }

    @Override
    public double north() {
        return south + rows * cellHeight;
    }

    @Override
    public double cellWidth() {
        return cellWidth;
    }

    @Override
    public double cellHeight() {
        return cellHeight;
    }

    @Override
    public int blockCols() {
        return 0;
    }

    @Override
    public int blockRows() {
        return 0;
    }

    @Override
    public String statedUnit() {
        return "";
    }

    @Override
    public void close() {
        // Nothing is open: the grid is in memory.
    }

    /** Words between white space, with the line that each stands on. */
    private static final class Tokens {
        private static final int LONGEST = 64;

        private final Path file;
        private final InputStream in;
        private final byte[] word = new byte[LONGEST];
        private int line = 1;
        /** Whether the word before ended its line. */
        private boolean lineEnded;

        Tokens(Path file, InputStream in) {
            this.file = file;
            this.in = in;
        }

        int line() {
            return line;
        }

        String next() throws IOException {
            line += lineEnded ? 1 : 0;
            int c = in.read();
            while (c == ' ' || c == '\t' || c == '\r' || c == '\n') {
                line += c == '\n' ? 1 : 0;
                c = in.read();
            }
            int length = 0;
            while (c > ' ') {
                if (length == LONGEST) {
                    throw new InputException(file.getFileName() + ", line " + line + ": a word of more than " + LONGEST
                            + " characters; this is not an Esri ASCII grid");
                }
                word[length++] = (byte) c;
                c = in.read();
            }
            lineEnded = c == '\n';
            return length == 0 ? null : new String(word, 0, length, StandardCharsets.ISO_8859_1);
        }

        double number(String token) {
            if (token == null) {
                throw new InputException(file.getFileName() + ", line " + line
                        + ": the file ends within its header; it is cut short, get it again");
            }
            if (token.equalsIgnoreCase("nan")) {
                return Double.NaN;
            }
            // Java would also take 5f, 5d and 0x1p3 for numbers.
            char last = token.charAt(token.length() - 1);
            try {
                if (last <= '9' && token.indexOf('x') < 0) {
                    return Double.parseDouble(token.indexOf(',') >= 0 ? token.replace(',', '.') : token);
                }
            } catch (NumberFormatException e) {
                throw noNumber(token, e);
            }
            throw noNumber(token, null);
        }

        private InputException noNumber(String token, NumberFormatException cause) {
            return new InputException(file.getFileName() + ", line " + line + ": \"" + token
                    + "\" is no number; this is not a whole Esri ASCII grid", cause);
        }
    }
}
