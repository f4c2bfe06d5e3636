package org.seacairn.plan;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.seacairn.plan.Quantity.Kind;

/** A block of a YAML file with a fixed set of keys. Any other key is noted as a problem. */
final class Block {
    private final String name;
    private final Value value;
    private final Map<String, Value> values = new LinkedHashMap<>();

    Block(String name, Value value, List<String> keys) {
        this.name = name;
        this.value = value;
        Map<String, Value> written = value.entries();
        written.forEach((key, held) -> {
            if (keys.contains(key)) {
                values.put(key, held);
                return;
            }
            held.problem(Shown.quoted(key) + " is not a key of " + name + "; " + Suggestion.advice(key, keys));
            // Read on under the key that was meant, so that what it holds is checked in the same run.
            Suggestion.nearest(key, keys).filter(meant -> !written.containsKey(meant))
                    .ifPresent(meant -> values.putIfAbsent(meant, held));
        });
    }

    /** Notes a problem at the block's own line. */
    void problem(String text) {
        value.problem(text);
    }

    Findings findings() {
        return value.findings();
    }

    /** Whether nothing at all is written in the block. */
    boolean isEmpty() {
        return value.entries().isEmpty();
    }

    boolean has(String key) {
        return values.containsKey(key);
    }

    /** The values that are there, by key, in the order written. */
    Map<String, Value> values() {
        return values;
    }

    Optional<Value> get(String key) {
        return Optional.ofNullable(values.get(key));
    }

    /** A value that must be there. {@code example} shows how to write it. */
    Optional<Value> need(String key, String example) {
        if (!has(key)) {
            problem(name + " has no \"" + key + "\"; add it, for example \"" + example + "\"");
        }
        return get(key);
    }

    Optional<String> text(String key) {
        return get(key).map(Value::text);
    }

    String needText(String key, String example) {
        return need(key, example).map(Value::text).orElse("");
    }

    OptionalDouble quantity(String key, Kind kind) {
        return has(key) ? OptionalDouble.of(values.get(key).quantity(kind)) : OptionalDouble.empty();
    }

    double needQuantity(String key, Kind kind, String example) {
        return need(key, example).map(found -> found.quantity(kind)).orElse(Double.NaN);
    }

    double needPositive(String key, Kind kind, String example) {
        return need(key, example).map(found -> found.positive(kind)).orElse(Double.NaN);
    }
}
