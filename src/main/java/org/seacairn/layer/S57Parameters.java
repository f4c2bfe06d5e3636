package org.seacairn.layer;

/**
 * Units and datums of a cell (field DSPM: IHO S-57 edition 3.1, part 3, 7.3.2.1).
 *
 * @param horizontalDatum HDAT; {@link #WGS_84} for every chart for navigation
 * @param compilationScale denominator (CSCL), or 0
 * @param depthUnit DUNI; {@link #METRES} for every chart for navigation
 * @param degrees whether coordinates are longitude and latitude (COUN)
 * @param perDegree what a position's whole numbers are divided by (COMF)
 * @param perDepthUnit what a sounding's depth is divided by (SOMF)
 */
record S57Parameters(int horizontalDatum, long compilationScale, int depthUnit, boolean degrees, double perDegree,
        double perDepthUnit) {
    static final int WGS_84 = 2;
    static final int METRES = 1;

    static S57Parameters parse(Iso8211File file, Iso8211File.Field field) {
        Iso8211Rows row = file.rows(field, false).only();
        return new S57Parameters(row.number("HDAT"), row.integer("CSCL"), row.number("DUNI"), row.number("COUN") == 1,
                factor(file, field, row, "COMF"), factor(file, field, row, "SOMF"));
    }

    private static double factor(Iso8211File file, Iso8211File.Field field, Iso8211Rows row, String label) {
        long factor = row.integer(label);
        if (factor < 1) {
            throw file.damaged(field.start(), label + " is " + factor + ", and nothing can be divided by that");
        }
        return factor;
    }
}
