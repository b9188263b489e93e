package withy.rod;

import java.util.SortedMap;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;
import withy.brief.Brief.HandleForm;
import withy.catalog.Arbor;
import withy.catalog.ButtCap;
import withy.catalog.Check;
import withy.catalog.Grip;
import withy.catalog.Hood;
import withy.catalog.ReelSeat;

/** The handle from butt to front. */
record HandleWalk(
        SortedMap<Station, Placed> placed, @Nullable SeatSet seat, double frontMm) {
    static HandleWalk of(Setting setting, Rod.Parts parts) {
        SortedMap<Station, Placed> at = new TreeMap<>();
        ButtCap cap = parts.at(Station.BUTT_CAP, ButtCap.class);
        if (cap != null) {
            at.put(Station.BUTT_CAP, new Placed(Station.BUTT_CAP, cap, -cap.addedMm(), cap.addedMm()));
        }
        ReelSeat seatPart = parts.at(Station.SEAT, ReelSeat.class);
        double rear = setting.footMm() - (seatPart == null ? 0 : seatPart.footCentreMm());
        double front = rear + (seatPart == null ? 0 : seatPart.lengthMm());
        SeatSet seat = null;
        if (seatPart != null) {
            Hood hood = parts.at(Station.HOOD, Hood.class);
            Arbor arbor = parts.at(Station.SEAT_ARBORS, Arbor.class);
            seat = new SeatSet(seatPart, hood, arbor, rear);
            at.put(Station.SEAT, new Placed(Station.SEAT, seatPart, rear, seatPart.lengthMm()));
            if (hood != null) {
                at.put(Station.HOOD, new Placed(Station.HOOD, hood, rear, 0));
            }
            if (arbor != null) {
                at.put(Station.SEAT_ARBORS, new Placed(Station.SEAT_ARBORS, arbor, rear, seatPart.lengthMm()));
            }
        }
        Check rearCheck = parts.at(Station.REAR_CHECK, Check.class);
        if (rearCheck != null) {
            rear -= rearCheck.widthMm();
            at.put(Station.REAR_CHECK, new Placed(Station.REAR_CHECK, rearCheck, rear, rearCheck.widthMm()));
        }
        Grip rearGrip = parts.at(Station.REAR_GRIP, Grip.class);
        if (rearGrip != null) {
            double length = setting.layout().form() == HandleForm.FULL ? rear : cut(parts, Station.REAR_GRIP, rearGrip);
            at.put(Station.REAR_GRIP, new Placed(Station.REAR_GRIP, rearGrip, rear - length, length));
        }
        Grip buttGrip = parts.at(Station.BUTT_GRIP, Grip.class);
        if (buttGrip != null) {
            double length = cut(parts, Station.BUTT_GRIP, buttGrip);
            at.put(Station.BUTT_GRIP, new Placed(Station.BUTT_GRIP, buttGrip, 0, length));
        }
        Check foreCheck = parts.at(Station.FORE_CHECK, Check.class);
        if (foreCheck != null) {
            at.put(Station.FORE_CHECK, new Placed(Station.FORE_CHECK, foreCheck, front, foreCheck.widthMm()));
            front += foreCheck.widthMm();
        }
        Grip foreGrip = parts.at(Station.FORE_GRIP, Grip.class);
        if (foreGrip != null) {
            double length = cut(parts, Station.FORE_GRIP, foreGrip);
            at.put(Station.FORE_GRIP, new Placed(Station.FORE_GRIP, foreGrip, front, length));
            front += length;
        }
        Check winding = parts.at(Station.WINDING_CHECK, Check.class);
        if (winding != null) {
            at.put(Station.WINDING_CHECK, new Placed(Station.WINDING_CHECK, winding, front, winding.widthMm()));
            front += winding.widthMm();
        }
        return new HandleWalk(at, seat, front);
    }

    private static double cut(Rod.Parts parts, Station station, Grip grip) {
        Build.Choice choice = parts.build().choices().get(station);
        return choice != null && choice.cutMm() > 0 ? choice.cutMm() : grip.lengthMm();
    }
}
