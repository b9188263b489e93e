package withy.report;

import com.openhtmltopdf.extend.FSTextBreaker;

/** Lets a line of paper break behind a space only, so that no size with signs inside (6-4.5/64, 4–7) is torn apart. */
final class AtSpaces implements FSTextBreaker {
    private static final int NO_MORE = -1;

    private String text = "";
    private int from;

    @Override
    public void setText(String words) {
        text = words;
        from = 0;
    }

    @Override
    public int next() {
        int space = text.indexOf(' ', from);
        from = space < 0 ? text.length() : space + 1;
        return space < 0 ? NO_MORE : from;
    }
}
