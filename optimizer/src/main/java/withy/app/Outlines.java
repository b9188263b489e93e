package withy.app;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import withy.app.MachineSheet.Diameter;
import withy.app.MachineSheet.Outline;
import withy.app.MachineSheet.Piece;
import withy.app.MachineSheet.Ring;
import withy.app.MachineSheet.Span;
import withy.brief.Brief;
import withy.catalog.Blank;
import withy.catalog.ButtCap;
import withy.catalog.Catalog;
import withy.catalog.Check;
import withy.catalog.Grip;
import withy.catalog.Guide;
import withy.catalog.Lab;
import withy.catalog.Part;
import withy.catalog.TipTop;
import withy.rod.Placed;
import withy.rod.Rod;
import withy.rod.SeatSet;
import withy.rod.Setting;

/** What a picture of a rod to scale needs. */
public final class Outlines {
    private static final double MG_PER_G = 1000;

    private Outlines() {}

    /** Of a build of an answer to a brief. */
    public static Outline of(Catalog catalog, Brief brief, BuildSheet sheet) {
        return of(Rod.measure(catalog, brief, BuildReader.written(sheet, catalog)));
    }

    /** Colours of its parts as a screen shows them, {@code #rrggbb} by station, as far as the lists tell them. */
    public static Map<String, String> colours(Catalog catalog, BuildSheet sheet) {
        Map<String, String> colours = new TreeMap<>();
        for (BuildSheet.PartLine line : sheet.parts()) {
            Part part = catalog.find(line.part());
            if (part != null) {
                colour(colours, line.station(), part);
            }
        }
        return colours;
    }

    static Map<String, String> colours(Rod rod) {
        Map<String, String> colours = new TreeMap<>();
        rod.placed().values().forEach(placed -> colour(colours, placed.station().key(), placed.part()));
        return colours;
    }

    private static void colour(Map<String, String> colours, String station, Part part) {
        Lab colour = part.facts().colour();
        if (colour != null) {
            colours.put(station, ScreenInk.of(colour));
        }
    }

    static Outline of(Rod rod) {
        Setting setting = rod.setting();
        Blank blank = setting.blank();
        List<Piece> pieces = new ArrayList<>();
        List<Ring> rings = new ArrayList<>();
        double from = 0;
        double to = blank.lengthMm();
        for (Placed placed : rod.placed().values()) {
            Part part = placed.part();
            from = Math.min(from, placed.fromMm());
            to = Math.max(to, placed.toMm());
            if (part instanceof Guide g) {
                double axis = setting.odAt(placed.fromMm()) / 2 + g.heightMm();
                rings.add(ring(placed, axis, g.ringSize(), g.ringIdMm(), g.feet()));
            } else if (part instanceof TipTop t) {
                rings.add(ring(placed, blank.tipOdMm() / 2 + t.ringSize() / 2, t.ringSize(), t.ringIdMm(), 0));
            } else if (part instanceof Grip g) {
                pieces.add(piece(placed, g.rearOdMm(), g.midOdMm(), g.frontOdMm()));
            } else if (part instanceof ButtCap c) {
                pieces.add(piece(placed, c.outerMm(), c.outerMm(), c.outerMm()));
            } else if (part instanceof Check c) {
                pieces.add(piece(placed, c.outerMm(), c.outerMm(), c.outerMm()));
            }
        }
        SeatSet seat = rod.seat();
        if (seat != null) {
            pieces.add(new Piece(
                    "seat",
                    seat.seat().facts().name(),
                    Sheets.rounded(seat.fromMm(), 2),
                    Sheets.rounded(seat.toMm(), 2),
                    seat.rearFaceMm(),
                    seat.seat().barrelOdMm(),
                    seat.frontFaceMm()));
        }
        return new Outline(
                Sheets.rounded(from, 2),
                Sheets.rounded(to, 2),
                setting.footMm(),
                setting.handMm(),
                Sheets.rounded(rod.handleFrontMm(), 2),
                Sheets.rounded(setting.footMm() + rod.balance().pointMm(), 2),
                Sheets.rounded(
                        setting.footMm()
                                + rod.total().momentMgMm()
                                        / MG_PER_G
                                        / (rod.total().massMg() / MG_PER_G),
                        2),
                !rod.brief().rodType().spinningReel(),
                blank.stations().stream()
                        .map(s -> new Diameter(s.xMm(), s.odMm()))
                        .toList(),
                setting.shape().joints().stream()
                        .map(j -> new Span(j.fromMm(), j.toMm()))
                        .toList(),
                pieces,
                rings);
    }

    private static Piece piece(Placed placed, double rear, double middle, double front) {
        return new Piece(
                placed.station().key(),
                placed.part().facts().name(),
                Sheets.rounded(placed.fromMm(), 2),
                Sheets.rounded(placed.toMm(), 2),
                rear,
                middle,
                front);
    }

    private static Ring ring(Placed placed, double axis, double size, double inner, int feet) {
        return new Ring(
                placed.station().key(),
                placed.part().facts().name(),
                Sheets.rounded(placed.fromMm(), 2),
                Sheets.rounded(axis, 2),
                size,
                inner,
                feet);
    }
}
