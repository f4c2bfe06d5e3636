package org.seacairn.layer;

import java.io.ByteArrayOutputStream;
import java.io.DataOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;

/** Classic NetCDF files written by hand after the grammar in the NetCDF User's Guide, appendix B. */
final class HandCdf {
    static final int BYTE = 1;
    static final int SHORT = 3;
    static final int FLOAT = 5;
    static final int DOUBLE = 6;

    private record Variable(String name, int[] axes, int type, Map<String, Object> attributes, double[] values) {}

    private final int version;
    private final List<String> names = new ArrayList<>();
    private final List<Integer> lengths = new ArrayList<>();
    private final List<Variable> variables = new ArrayList<>();
    private int records;

    /** @param version 1, 2 or 5 */
    HandCdf(int version) {
        this.version = version;
    }

    HandCdf dimension(String name, int length) {
        names.add(name);
        lengths.add(length);
        return this;
    }

    /** The first dimension, which counts records. */
    HandCdf records(String name, int count) {
        records = count;
        return dimension(name, 0);
    }

    HandCdf variable(String name, int type, Map<String, Object> attributes, double[] values, String... axes) {
        variables.add(new Variable(name, java.util.Arrays.stream(axes).mapToInt(names::indexOf).toArray(), type, attributes, values));
        return this;
    }

    private static int bytesOf(int type) {
        return new int[] {0, 1, 1, 2, 4, 4, 8}[type];
    }

    private boolean inRecords(Variable v) {
        return v.axes.length > 0 && lengths.get(v.axes[0]) == 0;
    }

    /** Bytes of a variable, or of one of its records. */
    private int size(Variable v) {
        int count = v.values.length / (inRecords(v) ? records : 1);
        return count * bytesOf(v.type);
    }

    private boolean alone() {
        return variables.stream().filter(this::inRecords).count() == 1;
    }

    private int padded(Variable v) {
        return inRecords(v) && alone() ? size(v) : (size(v) + 3) / 4 * 4;
    }

    byte[] toBytes() {
        try {
            // The offsets take the same room whatever they are, so the first header tells how long it is.
            int start = header(0).length;
            ByteArrayOutputStream bytes = new ByteArrayOutputStream();
            DataOutputStream out = new DataOutputStream(bytes);
            out.write(header(start));
            for (Variable v : variables) {
                if (!inRecords(v)) {
                    values(out, v, 0, v.values.length);
                }
            }
            for (int r = 0; r < records; r++) {
                for (Variable v : variables) {
                    if (inRecords(v)) {
                        int each = v.values.length / records;
                        values(out, v, r * each, each);
                    }
                }
            }
            return bytes.toByteArray();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private void values(DataOutputStream out, Variable v, int from, int count) throws IOException {
        for (int i = from; i < from + count; i++) {
            number(out, v.type, v.values[i]);
        }
        out.write(new byte[padded(v) - size(v)]);
    }

    private static void number(DataOutputStream out, int type, double value) throws IOException {
        switch (type) {
            case BYTE -> out.writeByte((int) value);
            case SHORT -> out.writeShort((int) value);
            case FLOAT -> out.writeFloat((float) value);
            default -> out.writeDouble(value);
        }
    }

    private byte[] header(int dataStart) throws IOException {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        DataOutputStream out = new DataOutputStream(bytes);
        out.write(new byte[] {'C', 'D', 'F', (byte) version});
        count(out, records);
        out.writeInt(10);
        count(out, names.size());
        for (int i = 0; i < names.size(); i++) {
            name(out, names.get(i));
            count(out, lengths.get(i));
        }
        out.writeInt(0);
        count(out, 0);
        out.writeInt(11);
        count(out, variables.size());
        int fixed = dataStart;
        int record = dataStart + variables.stream().filter(v -> !inRecords(v)).mapToInt(this::padded).sum();
        for (Variable v : variables) {
            name(out, v.name);
            count(out, v.axes.length);
            for (int axis : v.axes) {
                count(out, axis);
            }
            attributes(out, v.attributes);
            out.writeInt(v.type);
            count(out, padded(v));
            int begin = inRecords(v) ? record : fixed;
            if (version == 1) {
                out.writeInt(begin);
            } else {
                out.writeLong(begin);
            }
            record += inRecords(v) ? padded(v) : 0;
            fixed += inRecords(v) ? 0 : padded(v);
        }
        return bytes.toByteArray();
    }

    private void attributes(DataOutputStream out, Map<String, Object> attributes) throws IOException {
        out.writeInt(attributes.isEmpty() ? 0 : 12);
        count(out, attributes.size());
        for (Map.Entry<String, Object> attribute : attributes.entrySet()) {
            name(out, attribute.getKey());
            if (attribute.getValue() instanceof String text) {
                out.writeInt(2);
                name(out, text);
            } else {
                out.writeInt(DOUBLE);
                double[] numbers = (double[]) attribute.getValue();
                count(out, numbers.length);
                for (double number : numbers) {
                    out.writeDouble(number);
                }
            }
        }
    }

    private void name(DataOutputStream out, String name) throws IOException {
        byte[] text = name.getBytes(StandardCharsets.UTF_8);
        count(out, text.length);
        out.write(text);
        out.write(new byte[(4 - text.length % 4) % 4]);
    }

    private void count(DataOutputStream out, int count) throws IOException {
        if (version == 5) {
            out.writeLong(count);
        } else {
            out.writeInt(count);
        }
    }
}
