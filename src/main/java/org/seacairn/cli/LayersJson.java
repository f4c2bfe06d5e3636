package org.seacairn.cli;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonGenerator;
import java.io.IOException;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import org.locationtech.jts.geom.Envelope;
import org.seacairn.geodesy.Crs;
import org.seacairn.layer.GeometryCheck;
import org.seacairn.layer.GridValues;
import org.seacairn.score.BathymetryFacts;
import org.seacairn.score.ChartComparison;
import org.seacairn.score.GridFacts;
import org.seacairn.score.GridOverlap;
import org.seacairn.score.LayerFacts;
import org.seacairn.score.LayerFacts.ClassCount;
import org.seacairn.score.LayersReport;

/** What {@code layers} prints for programs. What cannot be told is null. */
final class LayersJson {
    private final JsonGenerator json;

    private LayersJson(JsonGenerator json) {
        this.json = json;
    }

    static String of(LayersReport report) {
        StringWriter text = new StringWriter();
        try (JsonGenerator generator = new JsonFactory().createGenerator(text)) {
            generator.useDefaultPrettyPrinter();
            generator.enable(JsonGenerator.Feature.WRITE_BIGDECIMAL_AS_PLAIN);
            new LayersJson(generator).write(report);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return text + "\n";
    }

    private void write(LayersReport report) throws IOException {
        json.writeStartObject();
        json.writeStringField("title", report.plan().title());
        json.writeStringField("plan", report.plan().file().getFileName().toString());
        json.writeFieldName("working_grid");
        if (report.grid().isPresent()) {
            grid(report.grid().get());
        } else {
            json.writeNull();
        }
        json.writeFieldName("bathymetry");
        if (report.bathymetry().isPresent()) {
            bathymetry(report.bathymetry().get());
        } else {
            json.writeNull();
        }
        json.writeArrayFieldStart("layers");
        for (LayerFacts layer : report.layers()) {
            layer(layer);
        }
        json.writeEndArray();
        texts("warnings", report.plan().warnings());
        texts("problems", report.problems());
        json.writeEndObject();
    }

    private void grid(GridFacts facts) throws IOException {
        json.writeStartObject();
        crs(facts.grid().crs());
        json.writeNumberField("cols", facts.grid().cols());
        json.writeNumberField("rows", facts.grid().rows());
        json.writeNumberField("cell_m", facts.grid().cellM());
        extent(new Envelope(facts.grid().west(), facts.grid().east(), facts.grid().south(), facts.grid().north()),
                facts.lonLat());
        json.writeBooleanField("resampled", facts.resampled());
        json.writeNumberField("largest_scale_error", facts.largestScaleError());
        texts("notes", facts.notes());
        texts("warnings", facts.warnings());
        json.writeEndObject();
    }

    private void bathymetry(BathymetryFacts facts) throws IOException {
        GridValues values = facts.values();
        json.writeStartObject();
        json.writeStringField("file", facts.plan().source().file().getFileName().toString());
        json.writeStringField("format", facts.format());
        crs(facts.crs());
        json.writeNumberField("cols", facts.cols());
        json.writeNumberField("rows", facts.rows());
        json.writeNumberField("cell_width", facts.cellWidth());
        json.writeNumberField("cell_height", facts.cellHeight());
        extent(facts.extent(), facts.lonLat());
        json.writeStringField("values", facts.plan().values().name().toLowerCase(Locale.ROOT));
        json.writeStringField("unit", facts.plan().unit());
        json.writeStringField("unit_of_file", facts.statedUnit().isBlank() ? null : facts.statedUnit());
        json.writeStringField("datum", facts.plan().datum().orElse(null));
        json.writeNumberField("datum_offset_m", facts.plan().datumOffsetM());
        json.writeStringField("uncertainty", facts.plan().uncertainty().source());
        json.writeNumberField("cells", values.cells());
        json.writeNumberField("no_data_cells", values.missing());
        number("no_data_share", (double) values.missing() / values.cells(), 6);
        number("least_value", values.least(), 4);
        number("greatest_value", values.greatest(), 4);
        number("shallowest_m", facts.shallowestM(), 4);
        number("deepest_m", facts.deepestM(), 4);
        json.writeNumberField("cells_above_datum", facts.dryCells());
        if (!values.within().isEmpty()) {
            json.writeNumberField("cells_within_limits", values.within().get(0));
        }
        texts("warnings", facts.warnings());
        json.writeEndObject();
    }

    private void layer(LayerFacts facts) throws IOException {
        json.writeStartObject();
        json.writeStringField("role", facts.layer().role().name().toLowerCase(Locale.ROOT).replace('_', '-'));
        json.writeStringField("layer", facts.layer().source().label());
        json.writeStringField("file", facts.layer().source().file().getFileName().toString());
        json.writeStringField("table", facts.layer().source().table().orElse(null));
        json.writeStringField("format", facts.format());
        crs(facts.crs());
        json.writeNumberField("features", facts.features());
        json.writeNumberField("without_geometry", facts.withoutGeometry());
        json.writeObjectFieldStart("kinds");
        for (Map.Entry<String, Integer> kind : facts.kinds().entrySet()) {
            json.writeNumberField(kind.getKey(), kind.getValue());
        }
        json.writeEndObject();
        texts("attributes", facts.attributes());
        extent(facts.extent(), facts.lonLat());
        overlap(facts.overlap());
        if (!facts.classes().isEmpty()) {
            classes(facts.classes());
        }
        if (facts.chart().isPresent()) {
            chart(facts.chart().get());
        }
        invalid(facts.invalid());
        texts("notes", facts.notes());
        texts("warnings", facts.warnings());
        json.writeEndObject();
    }

    private void overlap(Optional<GridOverlap> overlap) throws IOException {
        if (overlap.isEmpty()) {
            json.writeNullField("features_on_grid");
            return;
        }
        json.writeNumberField("features_on_grid", overlap.get().onGrid());
        if (overlap.get().nearestM().isPresent()) {
            number("nearest_m", overlap.get().nearestM().getAsDouble(), 0);
            number("nearest_bearing_deg", overlap.get().bearingDeg().orElseThrow(), 0);
        }
    }

    private void classes(List<ClassCount> classes) throws IOException {
        json.writeArrayFieldStart("classes");
        for (ClassCount c : classes) {
            json.writeStartObject();
            json.writeStringField("class", c.name());
            json.writeNumberField("polygons", c.polygons());
            json.writeBooleanField("in_plan", c.planned().isPresent());
            json.writeEndObject();
        }
        json.writeEndArray();
    }

    private void chart(ChartComparison chart) throws IOException {
        json.writeObjectFieldStart("charted_depth");
        json.writeNumberField("cells_looked_at", chart.looked());
        json.writeNumberField("compared", chart.compared());
        json.writeNumberField("within", chart.within());
        json.writeNumberField("shoaler", chart.shoaler());
        json.writeNumberField("deeper", chart.deeper());
        json.writeNumberField("in_no_area", chart.outside());
        json.writeNumberField("without_depth", chart.chartOnly());
        json.writeNumberField("polygons_without_charted_depth", chart.silentAreas());
        json.writeEndObject();
    }

    private void invalid(List<GeometryCheck.Finding> findings) throws IOException {
        json.writeArrayFieldStart("invalid");
        for (GeometryCheck.Finding finding : findings) {
            json.writeStartObject();
            json.writeStringField("code", finding.code());
            json.writeNumberField("features", finding.features());
            json.writeArrayFieldStart("places");
            for (GeometryCheck.Place place : finding.places()) {
                json.writeStartObject();
                json.writeNumberField("feature", place.featureId());
                json.writeNumberField("x", place.x());
                json.writeNumberField("y", place.y());
                json.writeEndObject();
            }
            json.writeEndArray();
            json.writeEndObject();
        }
        json.writeEndArray();
    }

    private void crs(Crs crs) throws IOException {
        json.writeStringField("crs", crs.label());
    }

    /** West, south, east, north, as in GeoJSON's bbox: in the CRS, and in degrees on WGS 84. */
    private void extent(Envelope box, Optional<Envelope> lonLat) throws IOException {
        json.writeFieldName("extent");
        json.writeArray(new double[] {box.getMinX(), box.getMinY(), box.getMaxX(), box.getMaxY()}, 0, 4);
        if (lonLat.isEmpty()) {
            json.writeNullField("extent_deg");
            return;
        }
        json.writeArrayFieldStart("extent_deg");
        Envelope b = lonLat.get();
        for (double degrees : new double[] {b.getMinX(), b.getMinY(), b.getMaxX(), b.getMaxY()}) {
            json.writeNumber(rounded(degrees, 8));
        }
        json.writeEndArray();
    }

    private void number(String name, double value, int decimals) throws IOException {
        if (Double.isFinite(value)) {
            json.writeNumberField(name, rounded(value, decimals));
        } else {
            json.writeNullField(name);
        }
    }

    private static BigDecimal rounded(double value, int decimals) {
        return BigDecimal.valueOf(value).setScale(decimals, RoundingMode.HALF_EVEN).stripTrailingZeros();
    }

    private void texts(String name, List<String> texts) throws IOException {
        json.writeArrayFieldStart(name);
        for (String text : texts) {
            json.writeString(text);
        }
        json.writeEndArray();
    }
}
