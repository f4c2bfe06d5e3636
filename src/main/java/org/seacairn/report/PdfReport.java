package org.seacairn.report;

import com.openhtmltopdf.outputdevice.helper.BaseRendererBuilder.FontStyle;
import com.openhtmltopdf.outputdevice.helper.ExternalResourceControlPriority;
import com.openhtmltopdf.pdfboxout.PDFontSupplier;
import com.openhtmltopdf.pdfboxout.PdfBoxRenderer;
import com.openhtmltopdf.pdfboxout.PdfRendererBuilder;
import com.openhtmltopdf.util.XRLog;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.Path;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDDocumentInformation;
import org.seacairn.export.OutputFile;
import org.seacairn.plan.SitingPlan.Display;
import org.seacairn.report.PaperFonts.Face;

/**
 * A page as a PDF: the same sections, tables and drawings on sheets of paper, with tags for screen readers. Nothing is loaded from
 * anywhere, fonts are embedded, and the same page gives the same bytes.
 */
public final class PdfReport {
    public static final String FILE_NAME = "report.pdf";

    private PdfReport() {}

    /**
     * @param display A4, or letter for US units
     * @throws org.seacairn.InputException if the file cannot be written
     */
    public static void write(Page page, Display display, Path file) {
        OutputFile.bytes(file, out -> write(page, PaperSize.of(display), out));
    }

    private static void write(Page page, PaperSize paper, OutputStream out) throws IOException {
        XRLog.setLoggingEnabled(false);
        OwnFonts.install();
        try (PDDocument document = new PDDocument(); PaperFonts fonts = new PaperFonts(document)) {
            PdfRendererBuilder builder = new PdfRendererBuilder()
                    .usePDDocument(document)
                    // Tags; and no built-in font in the file.
                    .usePdfUaAccessibility(true)
                    .useFastMode()
                    .useSVGDrawer(new PaperDrawings(document, fonts))
                    .useUriResolver((base, uri) -> null)
                    .useExternalResourceAccessControl((uri, type) -> false, ExternalResourceControlPriority.RUN_BEFORE_RESOLVING_URI)
                    .useExternalResourceAccessControl((uri, type) -> false, ExternalResourceControlPriority.RUN_AFTER_RESOLVING_URI)
                    .withW3cDocument(PaperDocument.of(page, paper, fonts), null);
            font(builder, fonts, Face.REGULAR, "sans", 400, FontStyle.NORMAL);
            font(builder, fonts, Face.BOLD, "sans", 700, FontStyle.NORMAL);
            font(builder, fonts, Face.ITALIC, "sans", 400, FontStyle.ITALIC);
            font(builder, fonts, Face.BOLD_ITALIC, "sans", 700, FontStyle.ITALIC);
            font(builder, fonts, Face.MONO, "mono", 400, FontStyle.NORMAL);
            try (PdfBoxRenderer renderer = builder.buildPdfRenderer()) {
                renderer.layout();
                renderer.createPDFWithoutClosing();
            }
            sameBytes(document, page);
            document.save(out);
        }
    }

    private static void font(PdfRendererBuilder builder, PaperFonts fonts, Face face, String family, int weight, FontStyle style) {
        builder.useFont(new PDFontSupplier(fonts.get(face)), family, weight, style, true);
    }

    /** Neither the time nor an id made from it. */
    private static void sameBytes(PDDocument document, Page page) {
        PDDocumentInformation information = new PDDocumentInformation();
        information.setTitle(page.headTitle());
        information.setSubject(page.subject());
        information.setProducer("Seacairn " + page.version());
        document.setDocumentInformation(information);
        document.setDocumentId(0L);
    }
}
