package org.seacairn.layer;

import java.util.ArrayList;
import java.util.List;
import org.seacairn.layer.Iso8211File.DataRecord;
import org.seacairn.layer.Iso8211File.Field;

/** A feature record: attributes, and pointers to spatial records. */
final class S57FeatureRevision extends S57Revision<S57Feature> {
    /** What stands for an attribute that an update takes away (part 3, 8.4.2.2): the character of code 127. */
    private static final String DELETED = "\u007f";

    S57FeatureRevision(Iso8211File file, S57DataSet dataSet, DataRecord record, Field identifier) {
        super(file, dataSet, record, identifier);
    }

    @Override
    S57Feature create(int version) {
        return new S57Feature(name, id.number("PRIM"), id.number("OBJL"), version);
    }

    @Override
    int version(S57Feature known) {
        return known.version();
    }

    @Override
    void setVersion(S57Feature known, int version) {
        known.setVersion(version);
    }

    @Override
    void change(S57Feature feature, boolean created) {
        S57Change change = null;
        for (Field field : record.fields()) {
            switch (field.tag()) {
                case "ATTF" -> attributes(feature, file.rows(field, false));
                case "NATF" -> attributes(feature, file.rows(field, dataSet.nationalLevel() == S57DataSet.WIDE));
                case "FSPC" -> change = control(field, "FS", "NSPT", feature.spatial(), created);
                case "FSPT" -> {
                    put(feature.spatial(), pointers(field), change, created);
                    change = null;
                }
                default -> { }
            }
        }
    }

    private void attributes(S57Feature feature, Iso8211Rows rows) {
        while (rows.next()) {
            String value = rows.text("ATVL");
            if (value.equals(DELETED)) {
                feature.attributes().remove(rows.number("ATTL"));
            } else {
                // One text for all that are empty, lest a file of nothing else takes much memory.
                feature.attributes().put(rows.number("ATTL"), value.isEmpty() ? "" : value);
            }
        }
    }

    private List<S57Pointer> pointers(Field field) {
        List<S57Pointer> pointers = new ArrayList<>();
        Iso8211Rows rows = file.rows(field, false);
        while (rows.next()) {
            pointers.add(new S57Pointer(rows.name("NAME"), rows.number("ORNT"), rows.number("USAG")));
        }
        return pointers;
    }
}
