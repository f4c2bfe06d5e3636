package org.seacairn.export;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import javax.xml.stream.XMLOutputFactory;
import javax.xml.stream.XMLStreamException;
import javax.xml.stream.XMLStreamWriter;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.LineString;
import org.locationtech.jts.geom.Polygon;

/**
 * KML 2.3 (OGC 12-007r2, which keeps the namespace of 2.2 and tells the version by an attribute): one
 * folder a layer, one placemark a row, the columns as ExtendedData. Polygons are outlines without a
 * fill; colours live in the styles folder.
 */
public final class KmlWriter {
    static final String NAMESPACE = "http://www.opengis.net/kml/2.2";
    private static final String STYLE = "outline";

    private final XMLStreamWriter xml;

    private KmlWriter(XMLStreamWriter xml) {
        this.xml = xml;
    }

    /**
     * @param title the plan's title
     * @throws org.seacairn.InputException if the file cannot be written
     */
    public static void write(Path file, String title, List<FeatureTable<?>> tables) {
        OutputFile.text(file, out -> {
            try {
                // The JDK's own, whatever other writers are on the class path.
                XMLStreamWriter xml = XMLOutputFactory.newDefaultFactory().createXMLStreamWriter(out);
                new KmlWriter(xml).document(title, tables);
                xml.close();
            } catch (XMLStreamException e) {
                throw new IOException(e.getMessage(), e);
            }
            out.write('\n');
        });
    }

    private void document(String title, List<FeatureTable<?>> tables) throws XMLStreamException {
        xml.writeStartDocument("UTF-8", "1.0");
        line();
        xml.writeStartElement("kml");
        xml.writeDefaultNamespace(NAMESPACE);
        xml.writeAttribute("version", "2.3");
        xml.writeStartElement("Document");
        element("name", title);
        element("description", "Screening aid, not for navigation");
        line();
        xml.writeStartElement("Style");
        xml.writeAttribute("id", STYLE);
        xml.writeStartElement("PolyStyle");
        element("fill", "0");
        xml.writeEndElement();
        xml.writeEndElement();
        for (FeatureTable<?> table : tables) {
            folder(table);
        }
        line();
        xml.writeEndElement();
        xml.writeEndElement();
        xml.writeEndDocument();
    }

    private <T> void folder(FeatureTable<T> table) throws XMLStreamException {
        line();
        xml.writeStartElement("Folder");
        element("name", table.name());
        element("description", table.description());
        for (T row : table.rows()) {
            line();
            xml.writeStartElement("Placemark");
            element("name", table.label().apply(row));
            if (table.shape() != FeatureTable.Shape.POINT) {
                element("styleUrl", "#" + STYLE);
            }
            xml.writeStartElement("ExtendedData");
            for (Column<T> column : table.columns()) {
                xml.writeStartElement("Data");
                xml.writeAttribute("name", column.name());
                element("value", column.text(row));
                xml.writeEndElement();
            }
            xml.writeEndElement();
            geometry(table.geometry().apply(row), table.decimals());
            xml.writeEndElement();
        }
        line();
        xml.writeEndElement();
    }

    private void geometry(Geometry geometry, int decimals) throws XMLStreamException {
        switch (geometry.getGeometryType()) {
            case Geometry.TYPENAME_POINT -> {
                xml.writeStartElement("Point");
                coordinates(geometry.getCoordinates(), decimals);
                xml.writeEndElement();
            }
            case Geometry.TYPENAME_LINESTRING -> {
                xml.writeStartElement("LineString");
                // Without it a long line runs below the sea surface.
                element("tessellate", "1");
                coordinates(geometry.getCoordinates(), decimals);
                xml.writeEndElement();
            }
            case Geometry.TYPENAME_POLYGON -> polygon((Polygon) geometry, decimals);
            case Geometry.TYPENAME_MULTIPOLYGON -> {
                xml.writeStartElement("MultiGeometry");
                for (int i = 0; i < geometry.getNumGeometries(); i++) {
                    polygon((Polygon) geometry.getGeometryN(i), decimals);
                }
                xml.writeEndElement();
            }
            default -> throw new IllegalArgumentException("no KML for " + geometry.getGeometryType());
        }
    }

    private void polygon(Polygon polygon, int decimals) throws XMLStreamException {
        xml.writeStartElement("Polygon");
        // Without it an outline of long edges is drawn as chords below the sea surface.
        element("tessellate", "1");
        ring("outerBoundaryIs", polygon.getExteriorRing(), decimals);
        for (int i = 0; i < polygon.getNumInteriorRing(); i++) {
            ring("innerBoundaryIs", polygon.getInteriorRingN(i), decimals);
        }
        xml.writeEndElement();
    }

    private void ring(String boundary, LineString ring, int decimals) throws XMLStreamException {
        xml.writeStartElement(boundary);
        xml.writeStartElement("LinearRing");
        coordinates(ring.getCoordinates(), decimals);
        xml.writeEndElement();
        xml.writeEndElement();
    }

    private void coordinates(Coordinate[] vertices, int decimals) throws XMLStreamException {
        xml.writeStartElement("coordinates");
        for (int i = 0; i < vertices.length; i++) {
            xml.writeCharacters((i == 0 ? "" : " ") + Decimals.text(vertices[i].x, decimals) + ","
                    + Decimals.text(vertices[i].y, decimals));
        }
        xml.writeEndElement();
    }

    private void element(String name, String text) throws XMLStreamException {
        xml.writeStartElement(name);
        xml.writeCharacters(XmlText.clean(text));
        xml.writeEndElement();
    }

    private void line() throws XMLStreamException {
        xml.writeCharacters("\n");
    }
}
