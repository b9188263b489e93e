package withy.report;

import withy.app.FolderAnswer;
import withy.explain.Phrases;

/** The answers of {@code doctor}, {@code backup} and {@code restore} for a terminal of 80 columns. */
public final class FolderText {
    private FolderText() {}

    /** Text of an answer, lines ended by {@code \n}. */
    public static String of(FolderAnswer answer) {
        Page page = new Page();
        String key = "text.folder." + answer.what() + (answer.sound() ? "" : ".faults");
        page.paragraph(
                "",
                Phrases.of(
                        key,
                        answer.file(),
                        answer.movements(),
                        answer.jobs(),
                        answer.faults().size()));
        answer.faults().forEach(fault -> page.paragraph("· ", fault));
        if (!answer.sound()) {
            page.paragraph("", Phrases.of("text.folder.mend"));
        }
        if (!answer.notes().isEmpty()) {
            page.heading(Phrases.of("text.folder.notes"));
            answer.notes().forEach(note -> page.paragraph("· ", note));
        }
        return page.toString();
    }
}
