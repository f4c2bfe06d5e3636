package org.seacairn.layer;

import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.util.Map;

/** A BAG of 3 x 2 nodes of 10 x 20 m at 500,000 east, 3,000,000 north on UTM 17, and larger ones to measure. */
public final class BagFixture {
    static final String WKT = "PROJCS[\"WGS 84 / UTM zone 17N\",GEOGCS[\"WGS 84\",DATUM[\"WGS_1984\",SPHEROID[\"WGS 84\",6378137,298.257223563]],"
            + "PRIMEM[\"Greenwich\",0],UNIT[\"degree\",0.0174532925199433],EXTENSION[\"Source\",\"a \"\"b\"\"\"]],PROJECTION[\"Transverse_Mercator\"],"
            + "PARAMETER[\"latitude_of_origin\",0],PARAMETER[\"central_meridian\",-81],PARAMETER[\"scale_factor\",0.9996],"
            + "PARAMETER[\"false_easting\",500000],PARAMETER[\"false_northing\",0],UNIT[\"metre\",1]]";
    static final float NO = 1e6f;

    private static final Map<String, Object> NONE = Map.of();

    private BagFixture() {}

    private static String system(String code, String space) {
        return "<gmd:referenceSystemInfo><gmd:MD_ReferenceSystem><gmd:referenceSystemIdentifier><gmd:RS_Identifier><gmd:code><gco:CharacterString>"
                + code.replace("\"", "&quot;") + "</gco:CharacterString></gmd:code><gmd:codeSpace><gco:CharacterString>" + space
                + "</gco:CharacterString></gmd:codeSpace></gmd:RS_Identifier></gmd:referenceSystemIdentifier></gmd:MD_ReferenceSystem></gmd:referenceSystemInfo>";
    }

    /** Metadata as of version 1.5 and later. */
    static String metadata(String corners, String crs, String codeSpace) {
        return metadata(corners, crs, codeSpace, new int[] {2, 3}, new double[] {20, 10}, "productUncert");
    }

    /** @param size rows and columns, as the metadata have them; so with the spacing */
    private static String metadata(String corners, String crs, String codeSpace, int[] size, double[] spacingM, String uncertainty) {
        String axis = "<gmd:axisDimensionProperties><gmd:MD_Dimension><gmd:dimensionName><gmd:MD_DimensionNameTypeCode>%s</gmd:MD_DimensionNameTypeCode>"
                + "</gmd:dimensionName><gmd:dimensionSize><gco:Integer>%s</gco:Integer></gmd:dimensionSize><gmd:resolution><gco:Measure uom=\"m\">%s"
                + "</gco:Measure></gmd:resolution></gmd:MD_Dimension></gmd:axisDimensionProperties>";
        return "<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n<gmi:MI_Metadata xmlns:gmi=\"http://www.isotc211.org/2005/gmi\""
                + " xmlns:gmd=\"http://www.isotc211.org/2005/gmd\" xmlns:gml=\"http://www.opengis.net/gml/3.2\""
                + " xmlns:gco=\"http://www.isotc211.org/2005/gco\" xmlns:bag=\"http://www.opennavsurf.org/schema/bag\">"
                + "<gmd:spatialRepresentationInfo><gmd:MD_Georectified>" + axis.formatted("row", size[0], spacingM[0])
                + axis.formatted("column", size[1], spacingM[1])
                + "<gmd:cornerPoints><gml:Point><gml:coordinates decimal=\".\" cs=\",\" ts=\" \">" + corners
                + "</gml:coordinates></gml:Point></gmd:cornerPoints></gmd:MD_Georectified></gmd:spatialRepresentationInfo>"
                + system("VERT_CS[\"MLLW\", VERT_DATUM[\"MLLW\", 2000]]", "WKT") + system(crs, codeSpace)
                + "<bag:verticalUncertaintyType><bag:BAG_VertUncertCode>" + uncertainty + "</bag:BAG_VertUncertCode></bag:verticalUncertaintyType>"
                + "</gmi:MI_Metadata>";
    }

    /**
     * A BAG on UTM 17 with square cells.
     *
     * @param west of the outer edge, metres; so with the south
     * @param elevations row by row from the north, NaN for none
     * @param uncertainties as those, as they are to stand in the file
     * @param kind what the metadata call them
     */
    public static byte[] of(double west, double south, double cellM, int cols, int rows, float[] elevations, float[] uncertainties, String kind) {
        double[] edges = {west + cellM / 2, south + cellM / 2, west + (cols - 0.5) * cellM, south + (rows - 0.5) * cellM};
        return withMetadata(metadata(edges[0] + "," + edges[1] + " " + edges[2] + "," + edges[3], WKT, "WKT", new int[] {rows, cols},
                new double[] {cellM, cellM}, kind))
                .contiguous("elevation", HandHdf.FLOAT, new long[] {rows, cols}, HandHdf.floats(fromSouth(elevations, cols, rows)), NONE)
                .contiguous("uncertainty", HandHdf.FLOAT, new long[] {rows, cols}, HandHdf.floats(fromSouth(uncertainties, cols, rows)), NONE)
                .toBytes();
    }

    private static float[] fromSouth(float[] values, int cols, int rows) {
        float[] turned = new float[values.length];
        for (int i = 0; i < values.length; i++) {
            turned[(rows - 1 - i / cols) * cols + i % cols] = Float.isNaN(values[i]) ? NO : values[i];
        }
        return turned;
    }

    static String metadata() {
        return metadata("500005,3000010 500025,3000030", WKT, "WKT");
    }

    static HandHdf withMetadata(String xml) {
        byte[] text = xml.getBytes(StandardCharsets.UTF_8);
        return new HandHdf().group("BAG_root", Map.of("Bag Version", "1.6.2")).contiguous("metadata", HandHdf.text(1), new long[] {text.length}, text, NONE);
    }

    /** Rows from the south: -1 -2 -3, then -4, no-data, -6. */
    static HandHdf plain(String xml) {
        return withMetadata(xml).contiguous("elevation", HandHdf.FLOAT, new long[] {2, 3}, HandHdf.floats(-1, -2, -3, -4, NO, -6), NONE)
                .contiguous("uncertainty", HandHdf.FLOAT, new long[] {2, 3}, HandHdf.floats(.1f, .2f, .3f, .4f, NO, .6f), NONE);
    }

    /** Finer cells in the first and the fifth node: 2 x 1 of them, and 2 x 2. */
    static HandHdf variable(int firstIndex) {
        byte[] meta = HandHdf.compound(28, "index", 0, HandHdf.INT, "dimensions_x", 4, HandHdf.INT, "dimensions_y", 8, HandHdf.INT,
                "resolution_x", 12, HandHdf.FLOAT, "resolution_y", 16, HandHdf.FLOAT, "sw_corner_x", 20, HandHdf.FLOAT, "sw_corner_y", 24, HandHdf.FLOAT);
        ByteBuffer cells = ByteBuffer.allocate(6 * 28).order(ByteOrder.LITTLE_ENDIAN);
        for (int[] cell : new int[][] {{firstIndex, 2, 1}, {-1, 0, 0}, {-1, 0, 0}, {-1, 0, 0}, {2, 2, 2}, {-1, 0, 0}}) {
            cells.putInt(cell[0]).putInt(cell[1]).putInt(cell[2]).putFloat(5).putFloat(10).putFloat(2.5f).putFloat(5);
        }
        Map<String, Object> resolutions = HandHdf.attributes("min_resolution_x", new double[] {5}, "min_resolution_y", new double[] {10},
                "max_resolution_x", new double[] {5}, "max_resolution_y", new double[] {10});
        byte[] fine = HandHdf.compound(8, "depth", 0, HandHdf.FLOAT, "depth_uncrt", 4, HandHdf.FLOAT);
        return plain(metadata()).contiguous("varres_metadata", meta, new long[] {2, 3}, cells.array(), resolutions)
                .contiguous("varres_refinements", fine, new long[] {1, 6},
                        HandHdf.floats(-7, .5f, -8, .9f, -9, .1f, NO, NO, -5.5f, .2f, -6.5f, .3f), NONE);
    }
}
