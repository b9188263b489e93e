package withy.report;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Stream;

/** Lines of plain text, none wider than the page; long texts are wrapped at spaces, words longer than a column are cut. */
final class Page {
    /** A terminal as narrow as they come. */
    static final int WIDTH = 80;

    private final StringBuilder text = new StringBuilder();

    /** An empty line. */
    Page gap() {
        text.append('\n');
        return this;
    }

    /** A heading with a rule under it. */
    Page heading(String title) {
        gap();
        paragraph("", title);
        return rule();
    }

    /** A line across. */
    Page rule() {
        text.append("─".repeat(WIDTH)).append('\n');
        return this;
    }

    /** A text after a lead; further lines are indented by the lead's width. */
    Page paragraph(String lead, String words) {
        List<String> lines = wrapped(words, WIDTH - width(lead));
        for (int i = 0; i < lines.size(); i++) {
            line((i == 0 ? lead : " ".repeat(width(lead))) + lines.get(i));
        }
        return this;
    }

    /** One row: the first column from the left, the others from the left or the right. */
    Page row(Column[] columns, String... cells) {
        List<List<String>> wrapped = new ArrayList<>();
        int height = 1;
        for (int i = 0; i < columns.length; i++) {
            List<String> lines = wrapped(cells[i], columns[i].width());
            wrapped.add(lines);
            height = Math.max(height, lines.size());
        }
        for (int l = 0; l < height; l++) {
            StringBuilder line = new StringBuilder();
            for (int i = 0; i < columns.length; i++) {
                String cell = l < wrapped.get(i).size() ? wrapped.get(i).get(l) : "";
                String pad = " ".repeat(columns[i].width() - width(cell));
                line.append(i == 0 ? "" : " ").append(columns[i].right() ? pad + cell : cell + pad);
            }
            line(line.toString());
        }
        return this;
    }

    /**
     * One column.
     *
     * @param width characters
     * @param right true where cells stand at its right edge
     */
    record Column(int width, boolean right) {}

    @Override
    public String toString() {
        return text.toString();
    }

    private void line(String line) {
        text.append(Unbroken.plain(line.stripTrailing())).append('\n');
    }

    /** Cut to a width at spaces; leading spaces are kept and indent further lines by two more. */
    private static List<String> wrapped(String words, int width) {
        String indent = " ".repeat(words.length() - words.stripLeading().length());
        List<String> lines = new ArrayList<>();
        StringBuilder line = new StringBuilder(indent);
        boolean empty = true;
        for (String word : words(words.strip(), width - indent.length())) {
            String rest = word;
            if (!empty && width(line.toString()) + 1 + width(rest) > width) {
                lines.add(line.toString());
                line = new StringBuilder(indent);
                empty = true;
            }
            line.append(empty ? "" : " ");
            while (width(line.toString()) + width(rest) > width) {
                int room = rest.offsetByCodePoints(0, width - width(line.toString()));
                lines.add(line + rest.substring(0, room));
                line = new StringBuilder(indent);
                rest = rest.substring(room);
            }
            line.append(rest);
            empty = false;
        }
        lines.add(line.toString());
        return lines;
    }

    /** What is to stay on one line; in a column too narrow for that, its single words. */
    private static List<String> words(String text, int room) {
        return Arrays.stream(Unbroken.of(text).split("[\\s\\p{Cntrl}]+"))
                .flatMap(held -> width(held) <= room
                        ? Stream.of(held)
                        : Stream.of(Unbroken.plain(held).split(" ")))
                .toList();
    }

    private static int width(String text) {
        return text.codePointCount(0, text.length());
    }
}
