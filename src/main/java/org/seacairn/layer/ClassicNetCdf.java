package org.seacairn.layer;

import java.io.IOException;
import java.nio.BufferUnderflowException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.channels.FileChannel;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.seacairn.InputException;

/**
 * NetCDF in the classic format and its two variants with longer offsets (CDF-1, CDF-2, CDF-5), by the grammar in
 * the NetCDF User's Guide, appendix B. The header is parsed here: it is one table, and counts are checked against
 * the bytes that are left before anything is made of them.
 */
final class ClassicNetCdf implements NetCdfFile {
    private static final int MOST_HEADER_BYTES = 64 << 20;
    /** NC_MAX_NAME of the library. */
    private static final int LONGEST_NAME = 256;
    private static final int DIMENSIONS = 10;
    private static final int VARIABLES = 11;
    private static final int ATTRIBUTES = 12;
    private static final int CHAR = 2;
    /** The number of each type from NC_BYTE, 1, on; NC_CHAR is text. */
    private static final StoredNumber[] NUMBERS = {null, number(StoredNumber.Form.SIGNED, 1), null,
        number(StoredNumber.Form.SIGNED, 2), number(StoredNumber.Form.SIGNED, 4), number(StoredNumber.Form.FLOAT, 4),
        number(StoredNumber.Form.FLOAT, 8), number(StoredNumber.Form.UNSIGNED, 1), number(StoredNumber.Form.UNSIGNED, 2),
        number(StoredNumber.Form.UNSIGNED, 4), number(StoredNumber.Form.SIGNED, 8), number(StoredNumber.Form.UNSIGNED, 8)};

    private record Dimension(String name, long length) {}

    /** A variable as the header has it; the length of a record is known only after the last. */
    private record Declared(String name, int[] dimensions, Map<String, Object> attributes, int type, long begin) {}

    private final Path file;
    private final FileChannel channel;
    private final long size;
    private final int version;
    private final ByteBuffer header;
    private final List<Dimension> dimensions = new ArrayList<>();
    private final Map<String, NetCdfVariable> variables = new LinkedHashMap<>();
    private long records;

    private ClassicNetCdf(Path file, FileChannel channel) throws IOException {
        this.file = file;
        this.channel = channel;
        this.size = channel.size();
        this.header = ByteBuffer.allocate((int) Math.min(size, MOST_HEADER_BYTES)).order(ByteOrder.BIG_ENDIAN);
        PlainArray.of(channel).read(header, 0);
        header.flip().position(3);
        this.version = header.get();
        if (version != 1 && version != 2 && version != 5) {
            throw problem("is of version " + version + "; versions 1, 2 and 5 are read, write it again as NetCDF-4");
        }
        parse();
    }

    private static StoredNumber number(StoredNumber.Form form, int bytes) {
        return new StoredNumber(form, bytes, ByteOrder.BIG_ENDIAN);
    }

    /** @throws InputException if the header is damaged */
    static ClassicNetCdf open(Path file) {
        FileChannel channel = null;
        ClassicNetCdf opened = null;
        try {
            channel = FileChannel.open(file, StandardOpenOption.READ);
            opened = new ClassicNetCdf(file, channel);
            return opened;
        } catch (BufferUnderflowException e) {
            throw VectorReader.problem(file, "header", "ends before its last variable; the file is damaged or cut short, get it again", e);
        } catch (IOException e) {
            throw VectorReader.problem(file, "header", "cannot be read (" + e.getMessage() + "); get the file again", e);
        } finally {
            if (opened == null && channel != null) {
                closeQuietly(channel);
            }
        }
    }

    private void parse() {
        long stated = count();
        long unknown = version == 5 ? -1 : 0xffff_ffffL;
        for (long i = list(DIMENSIONS); i > 0; i--) {
            dimensions.add(new Dimension(name(), count()));
        }
        attributes();
        List<Declared> declared = new ArrayList<>();
        for (long i = list(VARIABLES); i > 0; i--) {
            declared.add(variable());
        }
        long recordBytes = recordBytes(declared);
        long firstRecord = declared.stream().filter(this::hasRecords).mapToLong(Declared::begin).min().orElse(size);
        records = stated != unknown ? stated : recordBytes == 0 ? 0 : Math.max(0, size - firstRecord) / recordBytes;
        for (Declared one : declared) {
            variables.put(one.name, variable(one, recordBytes));
        }
    }

    private Declared variable() {
        String name = name();
        long rank = count();
        if (rank < 0 || rank > dimensions.size()) {
            throw problem("gives the variable " + name + " " + rank + " dimensions of " + dimensions.size() + "; the file is damaged, get it again");
        }
        int[] axes = new int[(int) rank];
        for (int i = 0; i < axes.length; i++) {
            long axis = count();
            if (axis < 0 || axis >= dimensions.size()) {
                throw problem("gives the variable " + name + " the dimension " + axis + " of " + dimensions.size() + "; the file is damaged, get it again");
            }
            axes[i] = (int) axis;
        }
        Map<String, Object> attributes = attributes();
        int type = type();
        count(); // The size of the variable, which follows from its dimensions and may be too large for this field.
        return new Declared(name, axes, attributes, type, version == 1 ? Integer.toUnsignedLong(header.getInt()) : header.getLong());
    }

    private boolean hasRecords(Declared variable) {
        return variable.dimensions.length > 0 && dimensions.get(variable.dimensions[0]).length == 0;
    }

    /** From one record to the next: the sum of what each variable has in one, filled up to whole words if there are several. */
    private long recordBytes(List<Declared> declared) {
        List<Declared> inRecords = declared.stream().filter(this::hasRecords).toList();
        if (inRecords.size() == 1) {
            return bytesOf(inRecords.get(0));
        }
        return inRecords.stream().mapToLong(v -> (bytesOf(v) + 3) / 4 * 4).reduce(0, ClassicNetCdf::sum);
    }

    /** Bytes of a variable, of one record where it has records. */
    private long bytesOf(Declared variable) {
        long bytes = variable.type == CHAR ? 1 : NUMBERS[variable.type].bytes();
        for (int i = hasRecords(variable) ? 1 : 0; i < variable.dimensions.length; i++) {
            bytes = product(bytes, dimensions.get(variable.dimensions[i]).length);
        }
        return bytes;
    }

    private NetCdfVariable variable(Declared one, long recordBytes) {
        List<String> axes = new ArrayList<>();
        int[] shape = new int[one.dimensions.length];
        for (int i = 0; i < shape.length; i++) {
            Dimension dimension = dimensions.get(one.dimensions[i]);
            long length = i == 0 && hasRecords(one) ? records : dimension.length;
            if (length < 0 || length > Integer.MAX_VALUE) {
                throw problem("gives the dimension " + dimension.name + " the length " + length + "; the file is damaged, get it again");
            }
            axes.add(dimension.name);
            shape[i] = (int) length;
        }
        Optional<StoredNumber> number = Optional.ofNullable(NUMBERS[one.type]).map(n -> one.type == 1 && "true".equalsIgnoreCase(
                String.valueOf(one.attributes.get("_Unsigned"))) ? number(StoredNumber.Form.UNSIGNED, 1) : n);
        return new NetCdfVariable(one.name, axes, shape, one.attributes, number, () -> array(one, shape, recordBytes, number.orElseThrow()));
    }

    private StoredArray array(Declared one, int[] shape, long recordBytes, StoredNumber number) {
        int cols = shape.length == 0 ? 1 : shape[shape.length - 1];
        int rows = shape.length < 2 ? 1 : shape[shape.length - 2];
        long rowStride = product(cols, number.bytes());
        StoredNumber stored = number;
        if (hasRecords(one) && shape.length == 2) {
            rowStride = recordBytes;
        } else if (hasRecords(one) && shape.length == 1) {
            if (recordBytes > 1 << 20) {
                throw VectorReader.problem(file, one.name, "stands a number at a time in records of " + recordBytes
                        + " bytes; write the file again without a record dimension");
            }
            stored = number.within(0, (int) recordBytes);
            rowStride = 0;
        }
        // The last number needs no more than itself behind it.
        long end = rows == 0 || cols == 0 ? 0 : sum(product(rows - 1L, rowStride),
                sum(product(cols - 1L, stored.elementBytes()), number.bytes()));
        if (one.begin < 0 || end > size - one.begin) {
            throw VectorReader.problem(file, one.name, "has values up to byte " + sum(Math.max(0, one.begin), end) + " and the file has " + size
                    + "; it is damaged or cut short, get it again");
        }
        return new PlainArray(PlainArray.of(channel), one.begin, rowStride, rows, cols, stored);
    }

    private Map<String, Object> attributes() {
        Map<String, Object> found = new LinkedHashMap<>();
        for (long i = list(ATTRIBUTES); i > 0; i--) {
            String name = name();
            int type = type();
            long length = count();
            int each = type == CHAR ? 1 : NUMBERS[type].bytes();
            if (length < 0 || length > header.remaining() / each) {
                throw new BufferUnderflowException();
            }
            int bytes = (int) length * each;
            ByteBuffer values = header.slice().limit(bytes);
            skip(bytes);
            if (type == CHAR) {
                found.put(name, StandardCharsets.UTF_8.decode(values).toString().replace("\0", ""));
            } else {
                double[] numbers = new double[(int) length];
                for (int k = 0; k < numbers.length; k++) {
                    numbers[k] = NUMBERS[type].get(values.order(ByteOrder.BIG_ENDIAN), k);
                }
                found.put(name, numbers);
            }
        }
        return found;
    }

    /** The length of a list, whose tag must be the one expected; an absent list is two zeros. */
    private long list(int tag) {
        int met = header.getInt();
        long length = count();
        // An entry takes eight bytes at least.
        if (met != tag && (met != 0 || length != 0) || length < 0 || length > header.remaining() / 8) {
            throw problem("has the tag " + met + " and the length " + length + " where a list of kind " + tag
                    + " belongs; the file is damaged, get it again");
        }
        return length;
    }

    private int type() {
        int type = header.getInt();
        if (type < 1 || type >= NUMBERS.length || version != 5 && type > 6) {
            throw problem("names the type " + type + ", which is none; the file is damaged, get it again");
        }
        return type;
    }

    private String name() {
        long length = count();
        if (length < 0 || length > LONGEST_NAME || length > header.remaining()) {
            throw problem("has a name of " + length + " bytes; the file is damaged, get it again");
        }
        byte[] bytes = new byte[(int) length];
        header.get(header.position(), bytes);
        skip(bytes.length);
        String name = new String(bytes, StandardCharsets.UTF_8);
        if (name.chars().anyMatch(Character::isISOControl)) {
            throw problem("has a name with control characters, \"" + XmlElements.shown(name) + "\"; the file is damaged, get it again");
        }
        return name;
    }

    /** Goes over bytes that are filled up to whole words. */
    private void skip(int bytes) {
        int whole = (bytes + 3) / 4 * 4;
        if (whole > header.remaining()) {
            throw new BufferUnderflowException();
        }
        header.position(header.position() + whole);
    }

    private long count() {
        return version == 5 ? header.getLong() : Integer.toUnsignedLong(header.getInt());
    }

    /** A product that stays at the largest number where it would run over. */
    private static long product(long a, long b) {
        return a < 0 || b < 0 || Math.multiplyHigh(a, b) != 0 || a * b < 0 ? Long.MAX_VALUE : a * b;
    }

    private static long sum(long a, long b) {
        return a + b < 0 ? Long.MAX_VALUE : a + b;
    }

    private InputException problem(String whatAndRemedy) {
        return VectorReader.problem(file, "header", whatAndRemedy);
    }

    private static void closeQuietly(FileChannel channel) {
        try {
            channel.close();
        } catch (IOException e) {
            // Opened for reading only: nothing can be lost.
        }
    }

    @Override
    public Path file() {
        return file;
    }

    @Override
    public String format() {
        return "NetCDF classic";
    }

    @Override
    public Map<String, NetCdfVariable> variables() {
        return variables;
    }

    @Override
    public void close() {
        closeQuietly(channel);
    }
}
