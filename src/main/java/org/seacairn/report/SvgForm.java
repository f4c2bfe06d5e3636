package org.seacairn.report;

import java.awt.Shape;
import java.awt.geom.AffineTransform;
import java.awt.geom.Path2D;
import java.awt.geom.PathIterator;
import java.awt.geom.Rectangle2D;
import java.io.IOException;
import java.io.OutputStream;
import java.util.Arrays;
import java.util.Base64;
import java.util.HashMap;
import java.util.Map;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPageContentStream;
import org.apache.pdfbox.pdmodel.PDResources;
import org.apache.pdfbox.pdmodel.common.PDRectangle;
import org.apache.pdfbox.pdmodel.font.PDFont;
import org.apache.pdfbox.pdmodel.graphics.form.PDFormXObject;
import org.apache.pdfbox.pdmodel.graphics.image.PDImageXObject;
import org.apache.pdfbox.pdmodel.graphics.state.PDExtendedGraphicsState;
import org.apache.pdfbox.pdmodel.graphics.state.RenderingMode;
import org.apache.pdfbox.pdmodel.interactive.annotation.PDAppearanceStream;
import org.apache.pdfbox.util.Matrix;
import org.w3c.dom.Element;
import org.w3c.dom.Node;

/**
 * Draws an SVG of our pages as a form of a PDF: lines and areas as such, texts as texts with embedded letters, PNG images as
 * they are. It knows the elements and attributes that our own code writes and refuses any other, so that nothing is left out unseen.
 *
 * <p>Own code, since the SVG libraries at hand load fonts through AWT, which fails on a machine without fontconfig.
 */
final class SvgForm {
    private static final String PNG = "data:image/png;base64,";

    private final PDDocument document;
    private final PaperFonts fonts;
    /** Of a stroke that does not scale. */
    private final double pointsPerPx;
    private final PDPageContentStream out;
    private final Map<String, PDExtendedGraphicsState> opacities = new HashMap<>();

    private SvgForm(PDDocument document, PaperFonts fonts, double pointsPerPx, PDPageContentStream out) {
        this.document = document;
        this.fonts = fonts;
        this.pointsPerPx = pointsPerPx;
        this.out = out;
    }

    /**
     * @param svg with a {@code viewBox}
     * @param pointsPerPx what a pixel of a stroke with {@code vector-effect} is on paper
     */
    static PDFormXObject of(PDDocument document, PaperFonts fonts, Element svg, double widthPt, double heightPt, double pointsPerPx) {
        // A form like any other, but one for which PDFBox has a stream that knows the document and so embeds the letters used.
        PDAppearanceStream form = new PDAppearanceStream(document);
        form.setBBox(new PDRectangle((float) widthPt, (float) heightPt));
        form.setResources(new PDResources());
        try (OutputStream bytes = form.getStream().createOutputStream(COSName.FLATE_DECODE);
                PDPageContentStream out = new PDPageContentStream(document, form, bytes)) {
            // In a PDF y grows upwards.
            AffineTransform whole = new AffineTransform(1, 0, 0, -1, 0, heightPt);
            new SvgForm(document, fonts, pointsPerPx, out).viewport(svg, whole, SvgLook.initial().at(svg), widthPt, heightPt);
        } catch (IOException e) {
            throw new IllegalStateException(e);
        }
        return form;
    }

    /** What stands in an {@code svg}, clipped to it. */
    private void viewport(Element svg, AffineTransform toForm, SvgLook look, double width, double height) throws IOException {
        double[] box = Arrays.stream(svg.getAttribute("viewBox").trim().split("[\\s,]+")).mapToDouble(Double::parseDouble).toArray();
        AffineTransform inner = new AffineTransform(toForm);
        double scaleX = width / box[2];
        double scaleY = height / box[3];
        if (!svg.getAttribute("preserveAspectRatio").equals("none")) {
            double scale = Math.min(scaleX, scaleY);
            inner.translate((width - scale * box[2]) / 2, (height - scale * box[3]) / 2);
            scaleX = scale;
            scaleY = scale;
        }
        inner.scale(scaleX, scaleY);
        inner.translate(-box[0], -box[1]);
        out.saveGraphicsState();
        trace(new Rectangle2D.Double(0, 0, width, height), toForm);
        out.clip();
        children(svg, inner, look, box);
        out.restoreGraphicsState();
    }

    private void children(Element parent, AffineTransform toForm, SvgLook look, double[] box) throws IOException {
        for (Node node = parent.getFirstChild(); node != null; node = node.getNextSibling()) {
            if (node instanceof Element element) {
                AffineTransform own = new AffineTransform(toForm);
                if (element.hasAttribute("transform")) {
                    own.concatenate(SvgTransform.of(element.getAttribute("transform")));
                }
                element(element, own, look.at(element), box);
            }
        }
    }

    private void element(Element e, AffineTransform toForm, SvgLook look, double[] box) throws IOException {
        switch (e.getNodeName()) {
            case "g", "a" -> children(e, toForm, look, box);
            case "svg" -> viewport(e, toForm, look, length(e, "width", box[2]), length(e, "height", box[3]));
            case "path" -> shape(SvgPath.of(e.getAttribute("d")), toForm, look);
            case "polyline" -> shape(SvgPath.of("M" + e.getAttribute("points")), toForm, look);
            case "rect" -> shape(rectangle(e, box), toForm, look);
            case "image" -> image(e, rectangle(e, box), toForm);
            case "text" -> text(e, toForm, look);
            case "title", "desc" -> { }
            default -> throw new IllegalArgumentException("no element <" + e.getNodeName() + "> in a drawing for paper");
        }
    }

    private static Rectangle2D rectangle(Element e, double[] box) {
        return new Rectangle2D.Double(length(e, "x", box[2]), length(e, "y", box[3]), length(e, "width", box[2]), length(e, "height", box[3]));
    }

    private static double length(Element e, String name, double whole) {
        String text = e.getAttribute(name);
        if (text.isEmpty()) {
            return 0;
        }
        return text.endsWith("%") ? whole * Double.parseDouble(text.substring(0, text.length() - 1)) / 100 : Double.parseDouble(text);
    }

    private void shape(Shape shape, AffineTransform toForm, SvgLook look) throws IOException {
        boolean fill = !look.is("fill", "none");
        boolean stroke = !look.is("stroke", "none") && look.number("stroke-width") > 0;
        if (!fill && !stroke || new Path2D.Double(shape).getCurrentPoint() == null) {
            return;
        }
        out.saveGraphicsState();
        opacity(look);
        if (fill) {
            fillColor(look, "fill");
        }
        if (stroke) {
            stroke(look, look.is("vector-effect", "non-scaling-stroke") ? pointsPerPx : scale(toForm));
        }
        trace(shape, toForm);
        boolean evenOdd = look.is("fill-rule", "evenodd");
        if (fill && stroke) {
            if (evenOdd) {
                out.fillAndStrokeEvenOdd();
            } else {
                out.fillAndStroke();
            }
        } else if (stroke) {
            out.stroke();
        } else if (evenOdd) {
            out.fillEvenOdd();
        } else {
            out.fill();
        }
        out.restoreGraphicsState();
    }

    private static double scale(AffineTransform transform) {
        return Math.sqrt(Math.abs(transform.getDeterminant()));
    }

    private void fillColor(SvgLook look, String name) throws IOException {
        float[] color = look.color(name);
        out.setNonStrokingColor(color[0], color[1], color[2]);
    }

    private void stroke(SvgLook look, double scale) throws IOException {
        float[] color = look.color("stroke");
        out.setStrokingColor(color[0], color[1], color[2]);
        out.setLineWidth((float) (look.number("stroke-width") * scale));
        out.setLineJoinStyle(look.is("stroke-linejoin", "round") ? 1 : 0);
        float[] dash = look.numbers("stroke-dasharray");
        for (int i = 0; i < dash.length; i++) {
            dash[i] *= (float) scale;
        }
        if (dash.length > 0) {
            out.setLineDashPattern(dash, 0);
        }
    }

    private void opacity(SvgLook look) throws IOException {
        float fill = (float) look.number("fill-opacity");
        float stroke = (float) look.number("stroke-opacity");
        if (fill < 1 || stroke < 1) {
            out.setGraphicsStateParameters(opacities.computeIfAbsent(fill + " " + stroke, key -> {
                PDExtendedGraphicsState state = new PDExtendedGraphicsState();
                state.setNonStrokingAlphaConstant(fill);
                state.setStrokingAlphaConstant(stroke);
                return state;
            }));
        }
    }

    private void trace(Shape shape, AffineTransform toForm) throws IOException {
        float[] p = new float[6];
        for (PathIterator i = shape.getPathIterator(toForm); !i.isDone(); i.next()) {
            switch (i.currentSegment(p)) {
                case PathIterator.SEG_MOVETO -> out.moveTo(p[0], p[1]);
                case PathIterator.SEG_LINETO -> out.lineTo(p[0], p[1]);
                case PathIterator.SEG_CUBICTO -> out.curveTo(p[0], p[1], p[2], p[3], p[4], p[5]);
                case PathIterator.SEG_CLOSE -> out.closePath();
                default -> throw new IllegalStateException("a quadratic curve");
            }
        }
    }

    private void image(Element e, Rectangle2D place, AffineTransform toForm) throws IOException {
        String href = e.getAttribute("href");
        if (!href.startsWith(PNG)) {
            throw new IllegalArgumentException("an image that does not carry its own data");
        }
        PDImageXObject image = PDImageXObject.createFromByteArray(document, Base64.getDecoder().decode(href.substring(PNG.length())), "image.png");
        AffineTransform unit = new AffineTransform(toForm);
        unit.translate(place.getX(), place.getMaxY());
        unit.scale(place.getWidth(), -place.getHeight());
        out.drawImage(image, new Matrix(unit));
    }

    private void text(Element e, AffineTransform toForm, SvgLook look) throws IOException {
        String text = e.getTextContent();
        PDFont font = fonts.get(look.face());
        double size = look.number("font-size");
        double width = font.getStringWidth(text) / 1000 * size;
        AffineTransform place = new AffineTransform(toForm);
        double anchor = look.is("text-anchor", "middle") ? width / 2 : look.is("text-anchor", "end") ? width : 0;
        place.translate(length(e, "x", 0) - anchor, length(e, "y", 0));
        place.scale(1, -1);
        out.saveGraphicsState();
        opacity(look);
        fillColor(look, "fill");
        if (!look.is("stroke", "none")) {
            // The halo, below the letters.
            stroke(look, scale(toForm));
            show(text, font, size, place, RenderingMode.STROKE);
        }
        show(text, font, size, place, RenderingMode.FILL);
        out.restoreGraphicsState();
    }

    private void show(String text, PDFont font, double size, AffineTransform place, RenderingMode mode) throws IOException {
        out.beginText();
        out.setFont(font, (float) size);
        out.setRenderingMode(mode);
        out.setTextMatrix(new Matrix(place));
        out.showText(text);
        out.endText();
    }
}
