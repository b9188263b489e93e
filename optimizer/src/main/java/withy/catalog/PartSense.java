package withy.catalog;

import java.util.List;
import org.jspecify.annotations.Nullable;

/** Faults that only two or more cells of one row show together: what can't be, as against what is hard to believe. */
final class PartSense {
    /** Slack of lengths that must add up, mm. */
    private static final double SLACK_MM = 3;

    private final int line;
    private final FaultList faults;
    private final Header header;

    private PartSense(int line, FaultList faults, Header header) {
        this.line = line;
        this.faults = faults;
        this.header = header;
    }

    static void check(Part part, int line, FaultList faults, Header header) {
        PartSense sense = new PartSense(line, faults, header);
        if (part instanceof Blank blank) {
            sense.blank(blank);
        } else if (part instanceof ReelSeat seat) {
            sense.seat(seat);
        } else if (part instanceof Arbor arbor) {
            sense.less("id_mm", arbor.idMm(), "od_mm", arbor.odMm());
        } else if (part instanceof Grip grip) {
            sense.grip(grip);
        } else if (part instanceof ButtCap cap) {
            sense.less("inner_mm", cap.innerMm(), "outer_mm", cap.outerMm());
        } else if (part instanceof Check check) {
            sense.less("inner_mm", check.innerMm(), "outer_mm", check.outerMm());
        } else if (part instanceof Guide guide) {
            sense.less("ring_id_mm", guide.ringIdMm(), "ring_size_mm", guide.ringSize());
        } else if (part instanceof TipTop top) {
            sense.less("ring_id_mm", top.ringIdMm(), "ring_size_mm", top.ringSize());
        }
    }

    private void blank(Blank blank) {
        notMore("lure_min_g", blank.lureMinG(), "lure_max_g", blank.lureMaxG());
        notMore("line_min_kg", blank.lineMinKg(), "line_max_kg", blank.lineMaxKg());
        pair("own_lure_min_g", blank.ownLureMinG(), "own_lure_max_g", blank.ownLureMaxG());
        pair("gauge_min", blank.gaugeMin(), "gauge_max", blank.gaugeMax());
        int joints = blank.sections() - 1;
        double sum = blank.sectionLengthsMm().stream()
                .mapToDouble(Double::doubleValue)
                .sum();
        double assembled = sum - joints * blank.ferruleOverlapMm();
        if (Math.abs(assembled - blank.lengthMm()) > SLACK_MM) {
            fault(
                    "section_lengths_mm",
                    Numbers.plain(sum) + " mm in all",
                    "less " + joints + " overlaps is " + Numbers.plain(assembled) + " mm, not the length",
                    Numbers.plain(blank.lengthMm() + joints * blank.ferruleOverlapMm()) + " mm within "
                            + Numbers.plain(SLACK_MM) + " mm",
                    header.written("ferrule_overlap_mm") + " is the length of one joint");
        }
        if ((joints == 0) != (blank.ferruleKind() == FerruleKind.NONE)) {
            fault(
                    "ferrule_kind",
                    Column.wordOf(blank.ferruleKind()),
                    "does not suit a blank of " + blank.sections() + " section" + (joints == 0 ? "" : "s"),
                    joints == 0 ? "none" : "put-over, spigot, sleeve",
                    joints == 0
                            ? header.written("section_lengths_mm") + " lacks a | between two sections"
                            : "the kind was left at none");
        }
        stations(blank);
    }

    private void stations(Blank blank) {
        List<Blank.OdStation> stations = blank.stations();
        double first = stations.get(0).xMm();
        double last = stations.get(stations.size() - 1).xMm();
        if (first != 0 || Math.abs(last - blank.lengthMm()) > 1e-6) {
            fault(
                    "stations_mm",
                    Numbers.plain(first) + " to " + Numbers.plain(last),
                    "does not reach from butt to tip",
                    "0 to " + Numbers.plain(blank.lengthMm()) + " mm",
                    "x was measured from the tip, or without the ferrule");
        }
        for (int i = 1; i < stations.size(); i++) {
            boolean back = stations.get(i).xMm() < stations.get(i - 1).xMm();
            boolean thrice =
                    i > 1 && stations.get(i).xMm() == stations.get(i - 2).xMm();
            if (back || thrice) {
                fault(
                        "stations_mm",
                        Numbers.plain(stations.get(i).xMm()),
                        back ? "goes back toward the butt" : "stands more than twice",
                        "x growing from butt to tip, twice only at a joint's step",
                        "two stations changed places");
            }
        }
    }

    private void seat(ReelSeat seat) {
        notMore("foot_length_min_mm", seat.footLengthMinMm(), "foot_length_max_mm", seat.footLengthMaxMm());
        less("bore_mm", seat.boreMm(), "barrel_od_mm", seat.barrelOdMm());
        less("foot_centre_mm", seat.footCentreMm(), "length_mm", seat.lengthMm());
        less("moving_hood_g", seat.movingHoodG(), "weight_g", seat.facts().weightG());
    }

    private void grip(Grip grip) {
        notMore("shortest_mm", grip.shortestMm(), "length_mm", grip.lengthMm());
        notMore("bore_mm", grip.boreMm(), "ream_max_mm", grip.reamMaxMm());
        double ends = Math.min(grip.frontOdMm(), grip.rearOdMm());
        String end = grip.frontOdMm() < grip.rearOdMm() ? "front_od_mm" : "rear_od_mm";
        less("bore_mm", grip.boreMm(), grip.midOdMm() < ends ? "mid_od_mm" : end, Math.min(grip.midOdMm(), ends));
    }

    private void pair(String low, @Nullable Double least, String high, @Nullable Double most) {
        if (least != null && most != null) {
            notMore(low, least, high, most);
        }
    }

    private void notMore(String low, double least, String high, double most) {
        if (least > most) {
            swapped(low, least, "is more than", high, most, "at most ");
        }
    }

    private void less(String low, double least, String high, double most) {
        if (least >= most) {
            swapped(low, least, "is not less than", high, most, "below ");
        }
    }

    private void swapped(String low, double least, String relation, String high, double most, String allowed) {
        fault(
                low,
                header.typed(low, least),
                relation + " " + header.written(high) + " " + header.typed(high, most),
                allowed + header.typed(low, most),
                "the two changed places");
    }

    private void fault(String column, String value, String problem, String allowed, String maybe) {
        faults.add(line, column, value, problem, allowed, maybe);
    }
}
