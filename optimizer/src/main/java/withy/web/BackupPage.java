package withy.web;

import io.javalin.http.Context;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import withy.app.Workshop;
import withy.shop.Backups;
import withy.shop.Shop;

/** A copy of the shop's memory: one stays in the shop's folder, the same goes wherever the browser puts it. */
final class BackupPage {
    private final Pages pages;

    BackupPage(Pages pages) {
        this.pages = pages;
    }

    /** Writes a copy, reads it through and hands it out; the same form sent again gets the same copy. */
    void copy(Context ctx) {
        Workshop workshop = pages.bench().workshop();
        if (!Shop.exists(workshop.folder())) {
            throw new Refusal(409, Words.say("backup.nothing"));
        }
        Path file = Path.of(pages.done()
                .get(
                        ctx.path() + " " + ctx.body(),
                        () -> Backups.backup(workshop.folder(), Backups.next(workshop.folder(), workshop.day()))
                                .file()));
        try {
            ctx.contentType("application/octet-stream")
                    .header("Content-Disposition", "attachment; filename=\"" + file.getFileName() + "\"")
                    .result(Files.newInputStream(file));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
