package org.seacairn.layer;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/** A feature record of a cell, which updates change. */
final class S57Feature {
    static final int POINT = 1;
    static final int LINE = 2;
    static final int AREA = 3;

    private final S57Name name;
    private final int primitive;
    private final int objectClass;
    private final Map<Integer, String> attributes = new TreeMap<>();
    private final List<S57Pointer> spatial = new ArrayList<>();
    private int version;

    /** @param primitive {@link #POINT}, {@link #LINE}, {@link #AREA}, or another: the feature has no place */
    S57Feature(S57Name name, int primitive, int objectClass, int version) {
        this.name = name;
        this.primitive = primitive;
        this.objectClass = objectClass;
        this.version = version;
    }

    S57Name name() {
        return name;
    }

    int primitive() {
        return primitive;
    }

    /** Whether the feature is one of geometry, and no collection of others. */
    boolean hasPlace() {
        return primitive >= POINT && primitive <= AREA;
    }

    /** Code of its object class (OBJL). */
    int objectClass() {
        return objectClass;
    }

    /** Values by attribute code, as written; changed by updates. */
    Map<Integer, String> attributes() {
        return attributes;
    }

    /** In the order that gives an area's boundary; changed by updates. */
    List<S57Pointer> spatial() {
        return spatial;
    }

    int version() {
        return version;
    }

    void setVersion(int version) {
        this.version = version;
    }
}
