package withy.search;

import withy.catalog.Part;
import withy.rod.Setting;
import withy.rod.Share;
import withy.rod.Station;

/** Small steps that several graphs share. */
final class Work {
    private Work() {}

    /** A part at a station with its style points and missed wishes. */
    static <P extends Part> Option<P> option(
            Ground ground, Setting setting, Station station, P part, double fromMm, double lengthMm, Share share) {
        return option(ground, setting, station, part, fromMm, lengthMm, share, 0);
    }

    /** The same with a wish that is missed besides. */
    static <P extends Part> Option<P> option(
            Ground ground,
            Setting setting,
            Station station,
            P part,
            double fromMm,
            double lengthMm,
            Share share,
            long missedBesides) {
        int count = setting.guideCount();
        long style = ground.style.part(setting.blank(), setting.layout().form(), station, part, count);
        return new Option<>(
                part,
                fromMm,
                lengthMm,
                Sums.of(share),
                style,
                missedBesides + ground.wishes.part(station, part, count));
    }
}
