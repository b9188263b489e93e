package withy.app;

import java.time.LocalDate;
import java.util.List;
import org.jspecify.annotations.Nullable;
import withy.app.OutAnswer.Waiting;
import withy.rod.Rod;
import withy.shop.Need;
import withy.shop.Piece;
import withy.shop.Snapshot;

/** When a part that ran out can be here for a job: what is on order for it first, then what nobody was promised, or a new order. */
final class Waits {
    private final LocalDate today;
    private final Snapshot snapshot;

    Waits(LocalDate today, Snapshot snapshot) {
        this.today = today;
        this.snapshot = snapshot;
    }

    /**
     * What waiting means.
     *
     * @param pieces pieces of the job; those of the part on the shelf count as gone
     * @param rod its build as agreed
     * @param part the part that ran out, or null where nothing did
     * @param wanted day the rod is wanted, or null
     */
    Waiting of(List<Piece> pieces, Rod rod, @Nullable String part, @Nullable LocalDate wanted) {
        if (part == null) {
            return told(today, wanted, false, null);
        }
        int needed = 0;
        for (Need need : Agreed.needs(rod)) {
            needed += need.part().equals(part) ? need.pieces() : 0;
        }
        int left = needed;
        int coming = 0;
        LocalDate last = today;
        for (Piece piece : pieces) {
            if (piece.part().equals(part) && piece.state().equals("used")) {
                left--;
            } else if (piece.part().equals(part) && piece.ordered() && piece.due() != null) {
                LocalDate due = LocalDate.parse(piece.due());
                last = due.isAfter(last) ? due : last;
                coming++;
            }
        }
        left = Math.max(1, left);
        LocalDate anew = snapshot.delivery(part, left, today);
        if (coming == 0) {
            return told(anew, wanted, false, null);
        }
        if (coming < left) {
            LocalDate rest = snapshot.delivery(part, left - coming, today);
            last = rest == null || rest.isAfter(last) ? rest : last;
        }
        boolean sooner = anew != null && (last == null || anew.isBefore(last));
        return told(last, wanted, coming >= left, sooner ? anew : null);
    }

    private static Waiting told(
            @Nullable LocalDate day, @Nullable LocalDate wanted, boolean onOrder, @Nullable LocalDate sooner) {
        return new Waiting(
                day != null || sooner != null,
                day == null ? null : day.toString(),
                RungLines.daysLate(day, wanted),
                onOrder,
                sooner == null ? null : sooner.toString());
    }
}
