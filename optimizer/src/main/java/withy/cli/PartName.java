package withy.cli;

import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;
import withy.app.PartIds;
import withy.app.Workshop;

/**
 * A part as typed, with or without the number of one piece: {@code PART#7}.
 *
 * @param id catalogue id
 * @param number the piece's number, or null
 */
record PartName(String id, @Nullable Integer number) {
    private static final Pattern PIECE = Pattern.compile("(.+)#(\\d{1,6})");

    /** Of a part of the lists, or the end with the id that was most likely meant. */
    static PartName of(String typed, Workshop workshop) {
        Matcher piece = PIECE.matcher(typed);
        boolean numbered = piece.matches();
        String id = numbered ? piece.group(1) : typed;
        if (workshop.lists().find(id) == null) {
            throw new Stop(
                    Exit.USAGE,
                    id + ": no part of the lists in " + workshop.folder() + ".",
                    PartIds.maybe(id, workshop.lists()));
        }
        return new PartName(id, numbered ? Integer.valueOf(piece.group(2)) : null);
    }

    @Override
    public String toString() {
        return number == null ? id : id + "#" + number;
    }
}
