package org.seacairn.layer;

import java.util.List;

/**
 * What a data set says of itself in its first record (fields DSID and DSSI: IHO S-57 edition 3.1, part 3, 7.3.1).
 *
 * @param update whether it revises another (EXPP 2), or stands by itself
 * @param edition of the cell (EDTN)
 * @param number of the update that it is, or up to which it holds all (UPDN)
 * @param issued date, year month day in eight digits (ISDT)
 * @param attributeLevel how texts are written (AALL): 0 ASCII, 1 Latin-1
 * @param nationalLevel how texts in the national language are written (NALL): 0, 1, or 2: two bytes a character
 * @param counts how many records of each kind the file holds; of an update, those of the update
 */
record S57DataSet(boolean update, int edition, int number, String issued, int attributeLevel, int nationalLevel,
        Counts counts) {
    /** Two bytes a character (UCS-2). */
    static final int WIDE = 2;
    private static final int CHAIN_NODE = 2;
    /** A data set of features without geometry says that structure is irrelevant. */
    private static final int IRRELEVANT = 255;

    /** Records by kind; of features, all of them. */
    record Counts(long features, long isolatedNodes, long connectedNodes, long edges) {}

    static S57DataSet parse(Iso8211File file, Iso8211File.DataRecord first) {
        Iso8211Rows id = row(file, first, "DSID");
        int purpose = id.number("EXPP");
        if (purpose != 1 && purpose != 2) {
            throw file.damaged(first.start(), "EXPP is " + purpose + ", which is neither a new data set (1) nor an update (2)");
        }
        Iso8211Rows structure = row(file, first, "DSSI");
        int kind = structure.number("DSTR");
        if (kind != CHAIN_NODE && kind != IRRELEVANT) {
            throw VectorReader.problem(file.file(), "field DSSI", "its data structure (DSTR) is " + kind
                    + ", and charts for navigation are chain-node (2); export it as such");
        }
        return new S57DataSet(purpose == 2, id.number("EDTN"), id.number("UPDN"), id.text("ISDT"),
                level(file, structure, "AALL", 1), level(file, structure, "NALL", WIDE), new Counts(
                        structure.integer("NOMR") + structure.integer("NOCR") + structure.integer("NOGR") + structure.integer("NOLR"),
                        structure.integer("NOIN"), structure.integer("NOCN"), structure.integer("NOED")));
    }

    private static int level(Iso8211File file, Iso8211Rows structure, String label, int most) {
        int level = structure.number(label);
        if (level < 0 || level > most) {
            throw VectorReader.problem(file.file(), "field DSSI", "its lexical level " + label + " is " + level + ", which is none of 0 to "
                    + most + "; the chart is damaged, so get it again");
        }
        return level;
    }

    private static Iso8211Rows row(Iso8211File file, Iso8211File.DataRecord first, String tag) {
        List<Iso8211File.Field> fields = first.fields().stream().filter(f -> f.tag().equals(tag)).toList();
        if (fields.size() != 1) {
            throw VectorReader.problem(file.file(), "first data record", "has no field " + tag
                    + ", so this is no S-57 data set; give the chart's own file, whose name ends in .000");
        }
        return file.rows(fields.get(0), false).only();
    }
}
