package org.seacairn.layer;

import java.util.List;
import org.seacairn.plan.SitingPlan.LayerFile;

/**
 * Reads points from delimited text (see {@link CsvRows}) that has a header line.
 * Coordinates are longitude and latitude in any form of {@link org.seacairn.geodesy.CoordinateText}, on WGS 84 unless the plan
 * states another CRS, or easting and northing in the CRS that the plan states. All attributes are text, an empty one is null; the
 * apostrophe that an export put before {@code =} or the like is taken off. A feature's id is its row's place below the header, from 1, empty lines not counted.
 */
final class CsvReader implements VectorReader {
    @Override
    public String format() {
        return "CSV";
    }

    @Override
    public List<String> extensions() {
        return List.of(".csv", ".txt");
    }

    @Override
    public VectorLayer read(LayerFile source) {
        return new CsvTable(source, CsvRows.open(source.file())).read();
    }
}
