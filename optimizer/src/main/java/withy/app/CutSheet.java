package withy.app;

import java.util.List;

/**
 * What is to be sawn for all accepted jobs, and from which piece.
 *
 * @param schema format of the answer
 * @param day the day it holds for
 * @param kerfMm width of the saw's cut
 * @param jobs the accepted jobs
 * @param parts what is cut, arbors first
 * @param warnings jobs that could not be read
 */
public record CutSheet(
        int schema,
        String day,
        double kerfMm,
        List<PickSheet.JobLine> jobs,
        List<CutPart> parts,
        List<String> warnings) {
    public CutSheet {
        jobs = List.copyOf(jobs);
        parts = List.copyOf(parts);
        warnings = List.copyOf(warnings);
    }

    /**
     * A part that is cut.
     *
     * @param kind arbor, grip or tube (a grip of hollow carbon)
     * @param soldMm length of one piece as sold
     * @param promised pieces promised for it
     * @param pieces those that are cut
     * @param whole promised pieces that stay whole
     * @param lacking pieces needed beyond those promised
     */
    public record CutPart(
            String part,
            String name,
            String bin,
            String kind,
            double soldMm,
            int promised,
            List<CutPiece> pieces,
            int whole,
            int lacking) {
        public CutPart {
            pieces = List.copyOf(pieces);
        }
    }

    /**
     * One piece with the cuts in it, from one end.
     *
     * @param cuts lengths in the order they are sawn
     * @param offcutMm what is left over
     */
    public record CutPiece(List<Cut> cuts, double offcutMm) {
        public CutPiece {
            cuts = List.copyOf(cuts);
        }
    }

    /**
     * One length.
     *
     * @param job whose it is
     * @param station where it goes
     * @param lengthMm length, mm
     * @param boreMm bore to ream it to: the wider end's
     * @param outerMm outer diameter to turn it down to; 0 where it stays
     */
    public record Cut(long job, String station, double lengthMm, double boreMm, double outerMm) {}
}
