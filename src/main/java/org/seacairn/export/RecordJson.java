package org.seacairn.export;

import com.fasterxml.jackson.core.JsonGenerator;
import java.io.IOException;
import java.lang.reflect.RecordComponent;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.regex.Pattern;

/**
 * Records as JSON, so that a new component of a plan cannot be forgotten: {@code distanceM} becomes
 * {@code distance_m}, {@code WEIGHTED_MEAN} {@code "weighted-mean"}; what is empty or not finite
 * becomes null.
 */
final class RecordJson {
    private static final Pattern WORD_START = Pattern.compile("(?<=[a-z0-9])(?=[A-Z])|(?<=[A-Z])(?=[A-Z][a-z])");

    private final JsonGenerator json;
    private final Path plan;

    /** @param plan the plan file: paths below its folder are written relative to it */
    RecordJson(JsonGenerator json, Path plan) {
        this.json = json;
        this.plan = plan;
    }

    /** The path as the plan would name it, with forward slashes; absolute if it lies elsewhere. */
    static String relative(Path plan, Path file) {
        Path folder = plan.toAbsolutePath().normalize().getParent();
        Path absolute = file.toAbsolutePath().normalize();
        return (absolute.startsWith(folder) ? folder.relativize(absolute) : absolute).toString().replace('\\', '/');
    }

    void write(Object value) throws IOException {
        if (value instanceof Optional<?> optional) {
            write(optional.orElse(null));
        } else if (value instanceof OptionalDouble optional) {
            write(optional.isPresent() ? optional.getAsDouble() : null);
        } else if (value instanceof Double number) {
            writeNumber(number);
        } else if (value instanceof Integer || value instanceof Long) {
            json.writeNumber(((Number) value).longValue());
        } else if (value instanceof Boolean flag) {
            json.writeBoolean(flag);
        } else if (value instanceof Enum<?> constant) {
            json.writeString(constant.name().toLowerCase(Locale.ROOT).replace('_', '-'));
        } else if (value instanceof Path path) {
            json.writeString(relative(plan, path));
        } else if (value instanceof List<?> list) {
            writeArray(list);
        } else if (value instanceof double[][] matrix) {
            writeMatrix(matrix);
        } else if (value instanceof Map<?, ?> map) {
            writeMap(map);
        } else if (value instanceof Record components) {
            json.writeStartObject();
            writeComponents(components);
            json.writeEndObject();
        } else if (value == null) {
            json.writeNull();
        } else {
            json.writeString((String) value);
        }
    }

    /** The components of a record as fields of the object that is open. */
    void writeComponents(Record value) throws IOException {
        for (RecordComponent component : value.getClass().getRecordComponents()) {
            json.writeFieldName(WORD_START.matcher(component.getName()).replaceAll("_").toLowerCase(Locale.ROOT));
            try {
                write(component.getAccessor().invoke(value));
            } catch (ReflectiveOperationException e) {
                throw new IllegalStateException("cannot read " + component, e);
            }
        }
    }

    private void writeNumber(double number) throws IOException {
        if (Double.isFinite(number)) {
            json.writeNumber(number);
        } else {
            json.writeNull();
        }
    }

    private void writeArray(List<?> list) throws IOException {
        json.writeStartArray();
        for (Object element : list) {
            write(element);
        }
        json.writeEndArray();
    }

    private void writeMatrix(double[][] matrix) throws IOException {
        json.writeStartArray();
        for (double[] row : matrix) {
            json.writeStartArray();
            for (double number : row) {
                writeNumber(number);
            }
            json.writeEndArray();
        }
        json.writeEndArray();
    }

    private void writeMap(Map<?, ?> map) throws IOException {
        json.writeStartObject();
        for (Map.Entry<?, ?> entry : map.entrySet()) {
            json.writeFieldName(entry.getKey().toString());
            write(entry.getValue());
        }
        json.writeEndObject();
    }
}
