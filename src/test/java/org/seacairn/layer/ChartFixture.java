package org.seacairn.layer;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;

/**
 * Writes tiny S-57 charts and updates byte by byte, so that a test can also write wrong ones. Positions are in tenths of a
 * degree and depths in tenths of a metre (COMF and SOMF are 10).
 */
final class ChartFixture {
    private static final String UNIT = "\u001f";
    private static final String END = "\u001e";

    /** Tag, labels and formats as IHO S-57 edition 3.1, part 3, chapter 7 lays them out. */
    private static final String[][] LAYOUTS = {
        {"0001", "", "(b12)"},
        {"DSID", "RCNM!RCID!EXPP!INTU!DSNM!EDTN!UPDN!UADT!ISDT!STED!PRSP!PSDN!PRED!PROF!AGEN!COMT", "(b11,b14,2b11,3A,2A(8),R(4),b11,2A,b11,b12,A)"},
        {"DSSI", "DSTR!AALL!NALL!NOMR!NOCR!NOGR!NOLR!NOIN!NOCN!NOED!NOFA", "(3b11,8b14)"},
        {"DSPM", "RCNM!RCID!HDAT!VDAT!SDAT!CSCL!DUNI!HUNI!PUNI!COUN!COMF!SOMF!COMT", "(b11,b14,3b11,b14,4b11,2b14,A)"},
        {"VRID", "RCNM!RCID!RVER!RUIN", "(b11,b14,b12,b11)"},
        {"VRPC", "VPUI!VPIX!NVPT", "(b11,2b12)"},
        {"VRPT", "*NAME!ORNT!USAG!TOPI!MASK", "(B(40),4b11)"},
        {"SGCC", "CCUI!CCIX!CCNC", "(b11,2b12)"},
        {"SG2D", "*YCOO!XCOO", "(2b24)"},
        {"SG3D", "*YCOO!XCOO!VE3D", "(3b24)"},
        {"ARCC", "ATYP!SURF!ORDR!RESO!FPMF", "(2b11,b12,b14,b11)"},
        {"FRID", "RCNM!RCID!PRIM!GRUP!OBJL!RVER!RUIN", "(b11,b14,2b11,2b12,b11)"},
        {"ATTF", "*ATTL!ATVL", "(b12,A)"},
        {"NATF", "*ATTL!ATVL", "(b12,A)"},
        {"FSPC", "FSUI!FSIX!NSPT", "(b11,2b12)"},
        {"FSPT", "*NAME!ORNT!USAG!MASK", "(B(40),3b11)"},
    };

    /** One field of a record: what it is called and what it holds, terminator included. */
    record Part(String tag, byte[] content) {}

    private final int purpose;
    private final String edition;
    private final String number;
    private final List<byte[]> records = new ArrayList<>();
    private final Map<Integer, Integer> counts = new TreeMap<>();
    private byte[] parameters = new byte[0];
    private int structure = 2;
    private int nationalLevel = 1;

    private ChartFixture(int purpose, String edition, String number) {
        this.purpose = purpose;
        this.edition = edition;
        this.number = number;
    }

    static ChartFixture chart(int edition, int number) {
        return new ChartFixture(1, Integer.toString(edition), Integer.toString(number)).parameters(2, 1, 1, 10, 10);
    }

    static ChartFixture update(int edition, int number) {
        return new ChartFixture(2, Integer.toString(edition), Integer.toString(number));
    }

    ChartFixture nationalLevel(int level) {
        nationalLevel = level;
        return this;
    }

    ChartFixture structure(int dstr) {
        structure = dstr;
        return this;
    }

    /** Makes the first record promise so many records of a type more than there are. */
    ChartFixture promising(int type, int more) {
        counts.merge(type, more, Integer::sum);
        return this;
    }

    ChartFixture parameters(int datum, int depthUnit, int coordinateUnit, int perDegree, int perMetre) {
        parameters = record(part("DSPM", "141114111144t", 20, 1, datum, 17, 23, 50_000, depthUnit, 1, 1, coordinateUnit, perDegree, perMetre, ""));
        return this;
    }

    ChartFixture withoutParameters() {
        parameters = new byte[0];
        return this;
    }

    /** A record with these fields; the first tells what kind it is. */
    ChartFixture with(Part... parts) {
        records.add(record(parts));
        counts.merge(parts[0].content()[0] & 0xff, 1, Integer::sum);
        return this;
    }

    /** A node, its positions as latitude and longitude. */
    ChartFixture node(int type, int id, int... positions) {
        return with(vector(type, id, 1, 1), positions(positions));
    }

    /** A node of soundings: latitude, longitude, depth and so on. */
    ChartFixture soundings(int id, int... positions) {
        return with(vector(110, id, 1, 1), part("SG3D", "4", boxed(positions)));
    }

    ChartFixture edge(int id, int begin, int end, int... positions) {
        return with(vector(130, id, 1, 1), nodes(begin, end), positions(positions));
    }

    ChartFixture feature(int id, int primitive, int objectClass, Part... parts) {
        List<Part> all = new ArrayList<>(List.of(feature(id, primitive, objectClass, 1, 1)));
        all.addAll(List.of(parts));
        return with(all.toArray(Part[]::new));
    }

    static Part vector(int type, int id, int version, int instruction) {
        return part("VRID", "1421", type, id, version, instruction);
    }

    static Part feature(int id, int primitive, int objectClass, int version, int instruction) {
        return part("FRID", "1411221", 100, id, primitive, 2, objectClass, version, instruction);
    }

    static Part positions(int... positions) {
        return part("SG2D", "4", boxed(positions));
    }

    static Part nodes(int begin, int end) {
        return part("VRPT", "141111", 120, begin, 255, 255, 1, 255, 120, end, 255, 255, 2, 255);
    }

    /** Pointers of a feature: for each the type, number, orientation, use and mask. */
    static Part pointers(int... pointers) {
        return part("FSPT", "14111", boxed(pointers));
    }

    /** Which entries an update changes: FSPC, VRPC or SGCC with instruction, first entry and count. */
    static Part control(String tag, int instruction, int index, int count) {
        return part(tag, "122", instruction, index, count);
    }

    static Part attributes(Object... codesAndTexts) {
        return part("ATTF", "2t", codesAndTexts);
    }

    private static Object[] boxed(int... numbers) {
        return Arrays.stream(numbers).boxed().toArray();
    }

    /**
     * A field.
     *
     * @param forms how each value is written, again and again: the width of a binary number, t for text with its
     *     terminator, w for wide text, f for text of fixed width
     */
    static Part part(String tag, String forms, Object... values) {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        for (int i = 0; i < values.length; i++) {
            char form = forms.charAt(i % forms.length());
            switch (form) {
                case 't' -> bytes.writeBytes((values[i] + UNIT).getBytes(StandardCharsets.ISO_8859_1));
                case 'w' -> bytes.writeBytes((values[i] + UNIT).getBytes(StandardCharsets.UTF_16LE));
                case 'f' -> bytes.writeBytes(values[i].toString().getBytes(StandardCharsets.ISO_8859_1));
                default -> {
                    for (int b = 0; b < form - '0'; b++) {
                        bytes.write((Integer) values[i] >> 8 * b);
                    }
                }
            }
        }
        bytes.writeBytes(END.getBytes(StandardCharsets.ISO_8859_1));
        return new Part(tag, bytes.toByteArray());
    }

    private static byte[] record(Part... parts) {
        List<Part> all = new ArrayList<>(List.of(part("0001", "2", 1)));
        all.addAll(List.of(parts));
        return whole(" D     ", "   5504", all);
    }

    private static byte[] whole(String afterLength, String afterBase, List<Part> parts) {
        StringBuilder directory = new StringBuilder();
        ByteArrayOutputStream area = new ByteArrayOutputStream();
        for (Part part : parts) {
            directory.append(part.tag()).append(String.format(Locale.ROOT, "%05d%05d", part.content().length, area.size()));
            area.writeBytes(part.content());
        }
        int base = 24 + directory.length() + 1;
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        bytes.writeBytes((String.format(Locale.ROOT, "%05d%s%05d%s", base + area.size(), afterLength, base, afterBase) + directory + END)
                .getBytes(StandardCharsets.ISO_8859_1));
        bytes.writeBytes(area.toByteArray());
        return bytes.toByteArray();
    }

    private static byte[] layout() {
        List<Part> layouts = new ArrayList<>(List.of(part("0000", "f", "0000;&   " + UNIT)));
        for (String[] layout : LAYOUTS) {
            layouts.add(part(layout[0], "f", "1600;&   a field" + UNIT + layout[1] + UNIT + layout[2]));
        }
        return whole("3LE1 09", " ! 5504", layouts);
    }

    private byte[] head() {
        return record(part("DSID", "1411tttfff1tt12t", 10, 1, purpose, 5, "TRIAL000.000", edition, number, "20260101", "20260102", "03.1", 1,
                        "", "2.0", 1, 550, "invented"),
                part("DSSI", "11144444444", structure, 1, nationalLevel, 0, 0, count(100), 0, count(110), count(120), count(130), 0));
    }

    private int count(int type) {
        return counts.getOrDefault(type, 0);
    }

    byte[] bytes() {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        bytes.writeBytes(layout());
        bytes.writeBytes(head());
        bytes.writeBytes(parameters);
        records.forEach(bytes::writeBytes);
        return bytes.toByteArray();
    }

    Path write(Path folder, String name) throws IOException {
        return Files.write(folder.resolve(name), bytes());
    }
}
