package withy.app;

import java.nio.file.Path;
import java.util.List;
import org.jspecify.annotations.Nullable;
import withy.explain.Phrases;
import withy.shop.Backups;
import withy.shop.Doctor;

/**
 * What {@code doctor}, {@code backup} and {@code restore} answer; its fields in this order are the published JSON.
 *
 * @param schema format of the answer
 * @param what looked, backedUp or restored
 * @param file the file written, or the memory looked at
 * @param bytes its size; null where it was not written
 * @param movements lines of the ledger in it
 * @param jobs jobs in it
 * @param sound true where nothing is wrong
 * @param faults everything wrong
 * @param notes what is sound but should be looked at
 */
public record FolderAnswer(
        int schema,
        String what,
        String file,
        @Nullable Long bytes,
        long movements,
        long jobs,
        boolean sound,
        List<String> faults,
        List<String> notes) {
    public FolderAnswer {
        faults = List.copyOf(faults);
        notes = List.copyOf(notes);
    }

    /** Of a look. */
    public static FolderAnswer of(Path file, Doctor.Finding finding) {
        return new FolderAnswer(
                Answer.SCHEMA,
                "looked",
                file.toString(),
                null,
                finding.movements(),
                finding.jobs(),
                finding.faults().isEmpty(),
                finding.faults(),
                finding.notes());
    }

    /** Of a copy. */
    public static FolderAnswer of(String what, Backups.Copy copy) {
        String before = copy.before();
        return new FolderAnswer(
                Answer.SCHEMA,
                what,
                copy.file(),
                copy.bytes(),
                copy.movements(),
                copy.jobs(),
                true,
                List.of(),
                before == null ? List.of() : List.of(Phrases.of("text.folder.before", before)));
    }
}
