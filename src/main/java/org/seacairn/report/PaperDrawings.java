package org.seacairn.report;

import com.openhtmltopdf.css.sheet.FontFaceRule;
import com.openhtmltopdf.css.style.CssContext;
import com.openhtmltopdf.extend.OutputDevice;
import com.openhtmltopdf.extend.SVGDrawer;
import com.openhtmltopdf.layout.SharedContext;
import com.openhtmltopdf.outputdevice.helper.BaseRendererBuilder.FontStyle;
import com.openhtmltopdf.pdfboxout.PdfBoxOutputDevice;
import com.openhtmltopdf.render.Box;
import com.openhtmltopdf.render.RenderingContext;
import java.awt.Rectangle;
import java.io.File;
import java.util.List;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.graphics.form.PDFormXObject;
import org.w3c.dom.Element;

/** Where the layout of a PDF meets a drawing: says how large it is, and draws it by {@link SvgForm}. The style sheet gives every size. */
final class PaperDrawings implements SVGDrawer {
    private static final double POINTS_PER_CSS_PX = 0.75;

    private final PDDocument document;
    private final PaperFonts fonts;

    PaperDrawings(PDDocument document, PaperFonts fonts) {
        this.document = document;
        this.fonts = fonts;
    }

    @Override
    public SVGImage buildSVGImage(Element svg, Box box, CssContext css, double cssWidth, double cssHeight, double dotsPerPixel) {
        if (cssWidth <= 0 || cssHeight <= 0) {
            throw new IllegalArgumentException("a drawing without a size on paper: " + svg.getAttribute("class"));
        }
        double points = POINTS_PER_CSS_PX / dotsPerPixel;
        PDFormXObject form = SvgForm.of(document, fonts, svg, cssWidth * points, cssHeight * points, PaperSvg.POINTS_PER_PX);
        return new Drawing(form, (int) Math.round(cssWidth), (int) Math.round(cssHeight));
    }

    private record Drawing(PDFormXObject form, int widthDots, int heightDots) implements SVGImage {
        @Override
        public int getIntrinsicWidth() {
            return widthDots;
        }

        @Override
        public int getIntrinsicHeight() {
            return heightDots;
        }

        @Override
        public void drawSVG(OutputDevice device, RenderingContext context, double x, double y) {
            ((PdfBoxOutputDevice) device).drawPdfAsImage(form,
                    new Rectangle((int) Math.round(x), (int) Math.round(y), widthDots, heightDots), widthDots, heightDots);
        }
    }

    @Override
    public void importFontFaceRules(List<FontFaceRule> fontFaces, SharedContext shared) {
        // Drawings use the fonts of the page.
    }

    @Override
    public void addFontFile(File fontFile, String family, Integer weight, FontStyle style) {
        // Drawings use the fonts of the page.
    }

    @Override
    public void close() {
        // The document closes what is drawn into it.
    }
}
