package withy.app;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import withy.app.BuildSheet.LayoutLine;
import withy.brief.Brief.HandleForm;
import withy.rod.Build;
import withy.rod.Station;

/**
 * A build as a file: an entry of {@code builds} cut down to layout and parts.
 *
 * @param schema format
 * @param layout master choice
 * @param parts what is at each filled station
 */
public record BuildFile(int schema, LayoutLine layout, List<At> parts) {

    public BuildFile {
        parts = List.copyOf(parts);
    }

    /**
     * One station.
     *
     * @param station where
     * @param part catalogue id
     * @param lengthMm length a grip is cut to, mm; null where it is used as sold or its length follows from its place
     */
    public record At(String station, String part, @Nullable Double lengthMm) {}

    /** Of a build. */
    public static BuildFile of(Build build) {
        List<At> parts = new ArrayList<>();
        for (Map.Entry<Station, Build.Choice> entry : build.choices().entrySet()) {
            double cut = entry.getValue().cutMm();
            parts.add(new At(entry.getKey().key(), entry.getValue().partId(), cut > 0 ? cut : null));
        }
        parts.add(new At(Station.BLANK.key(), build.layout().blankId(), null));
        return new BuildFile(Answer.SCHEMA, layout(build), parts);
    }

    static LayoutLine layout(Build build) {
        String handle = build.layout().form() == HandleForm.SPLIT ? "split" : "full";
        return new LayoutLine(
                build.layout().reelFootMm(), handle, build.layout().guideCount());
    }
}
