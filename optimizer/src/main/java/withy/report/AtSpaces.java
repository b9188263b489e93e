package withy.report;

import com.openhtmltopdf.extend.FSTextBreaker;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Lets a line of paper break behind a space, or a hyphen before a letter, so that no size with signs inside (6-4.5/64, 4–7) is torn apart. */
final class AtSpaces implements FSTextBreaker {
    private static final Pattern BREAK = Pattern.compile(" |-(?=\\p{L})");
    private static final int NO_MORE = -1;

    private Matcher breaks = BREAK.matcher("");

    @Override
    public void setText(String words) {
        breaks = BREAK.matcher(words);
    }

    @Override
    public int next() {
        return breaks.find() ? breaks.end() : NO_MORE;
    }
}
