package withy.app;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeMap;
import withy.app.CutSheet.Cut;
import withy.app.CutSheet.CutPart;
import withy.app.CutSheet.CutPiece;
import withy.app.JobRods.JobRod;
import withy.catalog.Arbor;
import withy.catalog.Grip;
import withy.catalog.Material;
import withy.catalog.Part;
import withy.rod.GripFit;
import withy.rod.Placed;
import withy.rod.Rod;
import withy.rod.SeatGap;
import withy.rod.SeatSet;
import withy.rod.Station;

/**
 * Writes the cut list of a shop. Lengths of one part are laid into pieces longest first, each into the first piece with room for it (first-fit
 * decreasing); what is equally long needs the fewest pieces so. A shaped grip is one length from one piece.
 */
public final class CutDesk {
    /** ASSUMED: a fine saw. */
    public static final double KERF_MM = 1;

    /** Shorter is sanded away. */
    private static final double SAWN_MM = 0.01;

    private final double kerfMm;
    private final SortedMap<String, Wanted> wanted = new TreeMap<>();
    private final SortedMap<String, Integer> promised = new TreeMap<>();

    private CutDesk(double kerfMm) {
        this.kerfMm = kerfMm;
    }

    /** The list as of now, for a saw that takes so much. */
    public static CutSheet of(Workshop workshop, double kerfMm) {
        JobRods.Accepted accepted = JobRods.accepted(workshop);
        CutDesk desk = new CutDesk(kerfMm);
        List<PickSheet.JobLine> jobs = new ArrayList<>();
        for (JobRod one : accepted.rods()) {
            jobs.add(new PickSheet.JobLine(
                    one.file().job().id(),
                    one.file().job().name(),
                    one.file().job().wanted()));
            desk.cut(one);
        }
        return new CutSheet(
                Answer.SCHEMA, workshop.day().toString(), kerfMm, jobs, desk.cutParts(), accepted.warnings());
    }

    private void cut(JobRod one) {
        Rod rod = one.rod();
        long job = one.file().job().id();
        Set<String> glued = one.file().job().glued();
        SeatSet seat = rod.seat();
        if (seat != null && seat.arbor() != null && !glued.contains(Station.SEAT_ARBORS.key())) {
            SeatGap gap = SeatGap.of(seat, rod.setting());
            for (int ring = 0; ring < gap.rings(); ring++) {
                add(
                        seat.arbor(),
                        new Cut(
                                job,
                                Station.SEAT_ARBORS.key(),
                                SeatGap.RING_MM,
                                two(gap.arborInnerMm()),
                                two(gap.arborOuterMm())));
            }
            promised.merge(seat.arbor().id(), gap.pieces(seat.arbor()), Integer::sum);
        }
        for (Placed placed : rod.placed().values()) {
            if (placed.part() instanceof Grip grip
                    && grip.lengthMm() - placed.lengthMm() > SAWN_MM
                    && !glued.contains(placed.station().key())) {
                GripFit fit = GripFit.of(grip, rod.setting().profile(), placed.fromMm(), placed.lengthMm());
                double bore = Math.max(fit.boreRearMm(), fit.boreFrontMm());
                add(grip, new Cut(job, placed.station().key(), two(placed.lengthMm()), two(bore), 0));
                promised.merge(grip.id(), 1, Integer::sum);
            }
        }
    }

    /** The lengths wanted of a part. */
    private record Wanted(Part part, List<Cut> cuts) {}

    private void add(Part part, Cut cut) {
        wanted.computeIfAbsent(part.id(), id -> new Wanted(part, new ArrayList<>()))
                .cuts()
                .add(cut);
    }

    private List<CutPart> cutParts() {
        List<CutPart> all = new ArrayList<>();
        wanted.values().forEach(one -> all.add(part(one.part(), one.cuts())));
        all.sort(Comparator.comparing(CutPart::kind).thenComparing(CutPart::part));
        return all;
    }

    private CutPart part(Part part, List<Cut> lengths) {
        boolean shaped = part instanceof Grip;
        double sold = part instanceof Grip grip ? grip.lengthMm() : ((Arbor) part).lengthMm();
        String kind = !shaped ? "arbor" : part.facts().material() == Material.CARBON ? "tube" : "grip";
        List<List<Cut>> pieces = shaped ? lengths.stream().map(List::of).toList() : laid(lengths, sold, kerfMm);
        int held = promised.getOrDefault(part.id(), 0);
        return new CutPart(
                part.id(),
                part.facts().name(),
                part.facts().bin(),
                kind,
                sold,
                held,
                pieces.stream()
                        .map(piece -> new CutPiece(piece, two(offcut(piece, sold, kerfMm))))
                        .toList(),
                Math.max(0, held - pieces.size()),
                Math.max(0, pieces.size() - held));
    }

    /** Lengths laid into pieces of one length; each cut but one that ends with the piece takes the saw's width. */
    static List<List<Cut>> laid(List<Cut> lengths, double soldMm, double kerfMm) {
        List<Cut> longest = new ArrayList<>(lengths);
        longest.sort(Comparator.comparingDouble(Cut::lengthMm).reversed());
        List<List<Cut>> pieces = new ArrayList<>();
        for (Cut cut : longest) {
            pieces.stream()
                    .filter(piece -> used(piece) + cut.lengthMm() + piece.size() * kerfMm <= soldMm + SAWN_MM)
                    .findFirst()
                    .orElseGet(() -> {
                        List<Cut> fresh = new ArrayList<>();
                        pieces.add(fresh);
                        return fresh;
                    })
                    .add(cut);
        }
        return pieces;
    }

    static double offcut(List<Cut> piece, double soldMm, double kerfMm) {
        return Math.max(0, soldMm - used(piece) - piece.size() * kerfMm);
    }

    private static double used(List<Cut> piece) {
        return piece.stream().mapToDouble(Cut::lengthMm).sum();
    }

    private static double two(double mm) {
        return Sheets.rounded(mm, 2);
    }
}
