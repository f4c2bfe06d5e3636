package org.seacairn.report;

import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayInputStream;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import javax.xml.XMLConstants;
import javax.xml.catalog.CatalogFeatures;
import javax.xml.catalog.CatalogManager;
import javax.xml.catalog.CatalogResolver;
import javax.xml.transform.stream.StreamSource;
import javax.xml.validation.Schema;
import javax.xml.validation.SchemaFactory;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.FieldSource;
import org.seacairn.export.Styles;
import org.xml.sax.SAXException;

/**
 * The styles, judged by the schema that OGC published with SLD 1.0.0 (OGC 02-070), its imports Filter 1.0.0 and GML 2.1.2, and W3C's
 * XLink, as {@code org.jvnet.ogc:ogc-schemas} and {@code org.hisrc.w3c:w3c-schemas} hold them. Nothing is fetched: a schema that is in
 * neither is an error.
 */
class StyleSchemaTest {
    static final List<String> NAMES = Styles.NAMES;
    private static final List<String> SCHEMAS = List.of("ogc/sld/1.0.0/StyledLayerDescriptor.xsd", "ogc/filter/1.0.0/filter.xsd",
            "ogc/filter/1.0.0/expr.xsd", "ogc/gml/2.1.2/geometry.xsd", "ogc/gml/2.1.2/gml.xsd", "ogc/gml/2.1.2/feature.xsd",
            "w3c/1999/xlink.xsd", "w3c/2001/xml.xsd", "w3c/2001/XMLSchema.dtd", "w3c/2001/datatypes.dtd");

    @TempDir
    private static Path folder;
    private static Schema schema;

    @BeforeAll
    static void readSchema() throws Exception {
        // In files: the parser does not find what stands beside a schema in a jar.
        for (String name : SCHEMAS) {
            Path copy = folder.resolve(name);
            Files.createDirectories(copy.getParent());
            try (InputStream in = StyleSchemaTest.class.getResourceAsStream("/" + name)) {
                Files.copy(in, copy);
            }
        }
        Path catalog = Files.writeString(folder.resolve("catalog.xml"), """
                <catalog xmlns="urn:oasis:names:tc:entity:xmlns:xml:catalog">
                  <rewriteSystem systemIdStartString="http://schemas.opengis.net/" rewritePrefix="%s"/>
                  <rewriteSystem systemIdStartString="http://www.w3.org/" rewritePrefix="%s"/>
                </catalog>
                """.formatted(folder.resolve("ogc").toUri(), folder.resolve("w3c").toUri()));
        SchemaFactory factory = SchemaFactory.newDefaultInstance();
        factory.setProperty(XMLConstants.ACCESS_EXTERNAL_SCHEMA, "file");
        factory.setProperty(XMLConstants.ACCESS_EXTERNAL_DTD, "file");
        CatalogResolver resolver = CatalogManager.catalogResolver(CatalogFeatures.defaults(), catalog.toUri());
        factory.setResourceResolver((type, namespace, publicId, systemId, base) ->
                systemId != null && systemId.startsWith("http:") ? resolver.resolveResource(type, namespace, publicId, systemId, base) : null);
        schema = factory.newSchema(folder.resolve(SCHEMAS.get(0)).toFile());
    }

    private static void validate(String style) throws Exception {
        schema.newValidator().validate(new StreamSource(new ByteArrayInputStream(style.getBytes(StandardCharsets.UTF_8))));
    }

    private static String style(String name) throws Exception {
        try (InputStream in = Styles.open(name)) {
            return new String(in.readAllBytes(), StandardCharsets.UTF_8);
        }
    }

    @ParameterizedTest
    @FieldSource("NAMES")
    void styleIsValid(String name) throws Exception {
        validate(style(name));
    }

    /** What an editor's hand may do, and Filter 1.0.0 among it, so that its schema is seen to be at work. */
    @ParameterizedTest
    @CsvSource(delimiter = '|', value = {
        "version=\"1.0.0\"|version=\"2.0.0\"|'1.0.0'",
        "<Size>|<Size unit=\"m\">|unit",
        "WellKnownName>|KnownName>|KnownName",
        "<ogc:PropertyIsEqualTo>|<ogc:PropertyIsEqualTo><ogc:Literal>1</ogc:Literal>|expression",
        "ogc:PropertyName>|ogc:Property>|Property",
        "<Title>Pass</Title>|<Title>Pass</Title><Title>Pass</Title>|Title"})
    void styleThatIsNotIsRefused(String good, String bad, String named) throws Exception {
        String review = style("review.sld");
        assertTrue(review.contains(good), good);
        SAXException refusal = assertThrows(SAXException.class, () -> validate(review.replace(good, bad)));
        assertTrue(refusal.getMessage().contains(named), refusal.getMessage());
    }
}
