package withy.report;

import java.awt.geom.GeneralPath;
import java.awt.geom.Point2D;
import java.awt.geom.Rectangle2D;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import org.apache.pdfbox.contentstream.PDFGraphicsStreamEngine;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.graphics.image.PDImage;

/** The boxes round everything stroked on a page, points of 1/72 inch. */
final class Strokes extends PDFGraphicsStreamEngine {
    private final List<Rectangle2D> boxes = new ArrayList<>();
    private GeneralPath path = new GeneralPath();

    Strokes(PDPage page) {
        super(page);
    }

    List<Rectangle2D> boxes() throws IOException {
        processPage(getPage());
        return boxes;
    }

    @Override
    public void appendRectangle(Point2D p0, Point2D p1, Point2D p2, Point2D p3) {
        path.moveTo(p0.getX(), p0.getY());
        path.lineTo(p1.getX(), p1.getY());
        path.lineTo(p2.getX(), p2.getY());
        path.lineTo(p3.getX(), p3.getY());
        path.closePath();
    }

    @Override
    public void drawImage(PDImage image) {
        throw new IllegalStateException("an image where only lines are drawn");
    }

    @Override
    public void clip(int windingRule) {
        // what is clipped away is not told apart: a ruler is never clipped on its own sheet
    }

    @Override
    public void moveTo(float x, float y) {
        path.moveTo(x, y);
    }

    @Override
    public void lineTo(float x, float y) {
        path.lineTo(x, y);
    }

    @Override
    public void curveTo(float x1, float y1, float x2, float y2, float x3, float y3) {
        path.curveTo(x1, y1, x2, y2, x3, y3);
    }

    @Override
    public Point2D getCurrentPoint() {
        return path.getCurrentPoint() == null ? new Point2D.Double() : path.getCurrentPoint();
    }

    @Override
    public void closePath() {
        path.closePath();
    }

    @Override
    public void endPath() {
        path = new GeneralPath();
    }

    @Override
    public void strokePath() {
        boxes.add(path.getBounds2D());
        endPath();
    }

    @Override
    public void fillPath(int windingRule) {
        endPath();
    }

    @Override
    public void fillAndStrokePath(int windingRule) {
        strokePath();
    }

    @Override
    public void shadingFill(COSName name) {
        throw new IllegalStateException("a shading where only lines are drawn");
    }
}
