package org.seacairn.layer;

/**
 * The 24 bytes that begin a record (ISO/IEC 8211:1994; IHO S-57 edition 3.1, part 3, 7.2): how long it is, where its
 * fields begin and how wide the numbers of its directory are.
 *
 * @param recordLength in bytes, or 0: as far as its fields reach, for a record longer than five digits can say
 * @param fieldControlLength bytes before a field's name in the descriptive record; 0 in a data record
 * @param fieldAreaStart bytes from the record's start to its first field
 */
record Iso8211Leader(int recordLength, int fieldControlLength, int fieldAreaStart, int lengthDigits, int positionDigits,
        int tagDigits) {
    static final int LENGTH = 24;

    /** @param identifier L for the descriptive record, D for one of data */
    static Iso8211Leader parse(Iso8211File file, int start, char identifier) {
        byte[] bytes = file.bytes();
        if (bytes.length - start < LENGTH) {
            throw file.damaged(start, "the file ends after " + (bytes.length - start) + " bytes of a record");
        }
        if (bytes[start + 6] != identifier) {
            throw file.damaged(start, "no " + (identifier == 'L' ? "descriptive" : "data") + " record of ISO/IEC 8211 begins here");
        }
        int base = (int) file.number(start + 12, 5);
        int lengthDigits = (int) file.number(start + 20, 1);
        int positionDigits = (int) file.number(start + 21, 1);
        int tagDigits = (int) file.number(start + 23, 1);
        Iso8211Leader leader = new Iso8211Leader((int) file.number(start, 5),
                identifier == 'L' ? (int) file.number(start + 10, 2) : 0, base, lengthDigits, positionDigits, tagDigits);
        leader.check(file, start);
        return leader;
    }

    private void check(Iso8211File file, int start) {
        if (lengthDigits == 0 || positionDigits == 0 || tagDigits == 0) {
            throw file.damaged(start + 20, "the record's directory has a column without digits");
        }
        // After the leader come entries, then one terminator.
        int entries = fieldAreaStart - LENGTH - 1;
        if (entries < 0 || entries % entryLength() != 0 || (long) start + fieldAreaStart > file.bytes().length
                || file.bytes()[start + fieldAreaStart - 1] != Iso8211File.FIELD_TERMINATOR) {
            throw file.damaged(start + 12, "the record's directory does not end where its leader says");
        }
    }

    int entryLength() {
        return tagDigits + lengthDigits + positionDigits;
    }
}
