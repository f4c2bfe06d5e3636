package org.seacairn.layer;

import io.jhdf.AbstractNode;
import io.jhdf.HdfFile;
import io.jhdf.ObjectHeader;
import io.jhdf.api.Attribute;
import io.jhdf.api.Dataset;
import io.jhdf.api.Group;
import io.jhdf.api.Node;
import io.jhdf.exceptions.HdfException;
import io.jhdf.object.datatype.CompoundDataType;
import io.jhdf.object.datatype.DataType;
import io.jhdf.object.datatype.FixedPoint;
import io.jhdf.object.datatype.FloatingPoint;
import io.jhdf.object.datatype.StringData;
import java.io.Closeable;
import java.io.IOException;
import java.lang.reflect.Array;
import java.nio.channels.FileChannel;
import java.nio.channels.FileChannel.MapMode;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Supplier;
import org.seacairn.InputException;

/**
 * An HDF5 file: groups, datasets and attributes as the library jhdf finds them, with every failure of its
 * turned into one message. It looks into a mapping of the file, so a wrong length in a header runs against
 * its end and allocates nothing.
 */
final class HdfStore implements Closeable {
    /** Longer attributes are not read; the longest that matter are a CRS as text. */
    private static final long LONGEST_ATTRIBUTE = 1 << 20;

    private final Path file;
    private final FileChannel channel;
    private final HdfFile hdf;

    private HdfStore(Path file, FileChannel channel, HdfFile hdf) {
        this.file = file;
        this.channel = channel;
        this.hdf = hdf;
    }

    /** @throws InputException if the file is no HDF5 or is cut short */
    static HdfStore open(Path file) {
        FileChannel channel = null;
        try {
            channel = FileChannel.open(file, StandardOpenOption.READ);
            long size = channel.size();
            FileChannel opened = channel;
            // A mapping reaches 2 GB; in larger files the library maps piece by piece.
            HdfFile hdf = guarded(file, "header", () -> size <= Integer.MAX_VALUE ? HdfFile.fromByteBuffer(mapped(opened))
                    : new HdfFile(file));
            long end = hdf.getHdfBackingStorage().getSuperblock().getEndOfFileAddress();
            if (end > size) {
                throw VectorReader.problem(file, "header", "states a length of " + end + " bytes and the file has " + size
                        + "; it is cut short, get it again");
            }
            return new HdfStore(file, channel, hdf);
        } catch (IOException | RuntimeException e) {
            close(channel);
            throw e instanceof InputException refused ? refused : unreadable(file, "header", e);
        }
    }

    private static java.nio.ByteBuffer mapped(FileChannel channel) {
        try {
            return channel.map(MapMode.READ_ONLY, 0, channel.size());
        } catch (IOException e) {
            throw new HdfException("the file cannot be mapped (" + e.getMessage() + ")", e);
        }
    }

    Path file() {
        return file;
    }

    /** What stands directly in a group; the path is empty for the root. */
    Map<String, Node> children(String path) {
        return ask(path.isEmpty() ? "root group" : path, () -> {
            Node node = path.isEmpty() ? hdf : hdf.getChildren().get(path);
            return node instanceof Group group ? group.getChildren() : Map.of();
        });
    }

    /** Text and numbers among the attributes of a node: a String, or a double[]. */
    Map<String, Object> attributes(Node node) {
        return ask(node.getName(), () -> {
            Map<String, Object> found = new LinkedHashMap<>();
            node.getAttributes().forEach((name, attribute) -> value(attribute).ifPresent(v -> found.put(name, v)));
            return found;
        });
    }

    private static Optional<Object> value(Attribute attribute) {
        DataType type = attribute.getDataType();
        boolean plain = type instanceof StringData || type instanceof FixedPoint || type instanceof FloatingPoint
                || type instanceof io.jhdf.object.datatype.VariableLength;
        if (!plain || attribute.isEmpty() || attribute.getSize() > LONGEST_ATTRIBUTE / Math.max(1, type.getSize())) {
            return Optional.empty();
        }
        Object data = attribute.getData();
        if (data != null && data.getClass().isArray() && Array.getLength(data) > 0 && Array.get(data, 0) instanceof String first) {
            data = first;
        }
        if (data instanceof String) {
            return Optional.of(data);
        }
        int count = data == null || !data.getClass().isArray() ? 1 : Array.getLength(data);
        double[] numbers = new double[count];
        for (int i = 0; i < count; i++) {
            if (!((data != null && data.getClass().isArray() ? Array.get(data, i) : data) instanceof Number number)) {
                return Optional.empty();
            }
            numbers[i] = number.doubleValue();
        }
        return Optional.of(numbers);
    }

    /** The datasets that an attribute DIMENSION_LIST names for each dimension, by their addresses; empty without one. */
    List<Long> dimensionScales(Dataset dataset) {
        return ask(dataset.getName(), () -> {
            Attribute attribute = dataset.getAttributes().get("DIMENSION_LIST");
            if (attribute == null || attribute.getSize() != dataset.getDimensions().length
                    || !(attribute.getData() instanceof Object[] lists)) {
                return List.of();
            }
            return java.util.Arrays.stream(lists).map(l -> l instanceof long[] one && one.length > 0 ? one[0] : -1L).toList();
        });
    }

    /** How a dataset stores its numbers; empty for text and whatever is no number. */
    Optional<StoredNumber> number(Dataset dataset) {
        return ask(dataset.getName(), () -> number(dataset.getDataType()));
    }

    /** A member of a dataset of compounds. */
    Optional<StoredNumber> member(Dataset dataset, String name) {
        return ask(dataset.getName(), () -> dataset.getDataType() instanceof CompoundDataType compound
                ? compound.getMembers().stream()
                        .filter(m -> m.getName().equals(name) && m.getOffset() >= 0
                                && m.getOffset() + (long) m.getDataType().getSize() <= compound.getSize())
                        .findFirst().flatMap(m -> number(m.getDataType()).map(n -> n.within(m.getOffset(), compound.getSize())))
                : Optional.empty());
    }

    private static Optional<StoredNumber> number(DataType type) {
        int bytes = type.getSize();
        if (type instanceof FixedPoint whole && (bytes == 1 || bytes == 2 || bytes == 4 || bytes == 8)
                && whole.getBitOffset() == 0 && whole.getBitPrecision() == 8 * bytes) {
            return Optional.of(new StoredNumber(whole.isSigned() ? StoredNumber.Form.SIGNED : StoredNumber.Form.UNSIGNED,
                    bytes, whole.getByteOrder()));
        }
        if (type instanceof FloatingPoint real && (bytes == 4 && real.getExponentSize() == 8 && real.getMantissaSize() == 23
                || bytes == 8 && real.getExponentSize() == 11 && real.getMantissaSize() == 52)) {
            return Optional.of(new StoredNumber(StoredNumber.Form.FLOAT, bytes, real.getByteOrder()));
        }
        return Optional.empty();
    }

    /** @throws InputException if the dataset has a shape, layout or compression that is not read here, or is cut short */
    StoredArray array(Dataset dataset, StoredNumber number) {
        ObjectHeader header = ask(dataset.getName(), () -> ((AbstractNode) dataset).getHeader());
        return ask(dataset.getName(), () -> new HdfLayout(file, channel, hdf.getHdfBackingStorage(), dataset, header).array(number));
    }

    /** Asks the library; whatever it fails with is the file's fault. */
    <T> T ask(String place, Supplier<T> question) {
        return guarded(file, place, question);
    }

    private static <T> T guarded(Path file, String place, Supplier<T> question) {
        try {
            return question.get();
        } catch (InputException e) {
            throw e;
        } catch (RuntimeException | StackOverflowError | InternalError e) {
            // A page of a mapping that can no longer be read is an InternalError.
            throw unreadable(file, place, e);
        }
    }

    private static InputException unreadable(Path file, String place, Throwable cause) {
        return VectorReader.problem(file, place, "is no HDF5 that can be read; the file is damaged or cut short, get it again",
                cause);
    }

    @Override
    public void close() {
        hdf.close();
        close(channel);
    }

    private static void close(FileChannel channel) {
        try {
            if (channel != null) {
                channel.close();
            }
        } catch (IOException e) {
            // Opened for reading only: nothing can be lost.
        }
    }
}
