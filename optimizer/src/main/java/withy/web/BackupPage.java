package withy.web;

import io.javalin.http.Context;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.Locale;
import withy.app.Workshop;
import withy.shop.Backups;
import withy.shop.Shop;

/** Copies of the shop's memory: one stays in the shop's folder, the same goes wherever the browser puts it. */
final class BackupPage {
    private static final DateTimeFormatter MINUTE = DateTimeFormatter.ofPattern("uuuu-MM-dd 'at' HH:mm", Locale.ROOT);

    private final Pages pages;

    BackupPage(Pages pages) {
        this.pages = pages;
    }

    /** Writes a copy, reads it through and goes where it is told of; the same form sent again goes there too. */
    void keep(Context ctx) {
        Workshop workshop = pages.bench().workshop();
        if (!Shop.exists(workshop.folder())) {
            throw new Refusal(409, Words.say("backup.none"));
        }
        Pages.go(ctx, pages.done().get(ctx.path() + " " + ctx.body(), () -> copied(workshop)));
    }

    private static String copied(Workshop workshop) {
        Path next = Backups.next(workshop.folder(), workshop.day());
        Backups.backup(workshop.folder(), next);
        return address(String.valueOf(next.getFileName()));
    }

    /** Which copy it is, when it was kept, what is in it, and how it is put back. */
    void show(Context ctx) {
        Backups.Kept kept = kept(ctx);
        Backups.Copy copy = kept.readThrough();
        pages.html(
                ctx,
                "copy",
                new CopyView(
                        pages.frame(Words.say("copy.head"), "stock", null),
                        kept.name(),
                        minute(kept),
                        folder(pages.bench().workshop()),
                        copy.movements(),
                        copy.jobs(),
                        address(kept.name()) + "/file"));
    }

    /** The copy itself. */
    void file(Context ctx) {
        Backups.Kept kept = kept(ctx);
        try {
            ctx.contentType("application/octet-stream")
                    .header("Content-Disposition", "attachment; filename=\"" + kept.name() + "\"")
                    .result(Files.newInputStream(kept.file()));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private Backups.Kept kept(Context ctx) {
        String name = ctx.pathParam("copy");
        return Backups.kept(pages.bench().workshop().folder()).stream()
                .filter(kept -> kept.name().equals(name))
                .findFirst()
                .orElseThrow(() -> new Refusal(404, Words.say("copy.gone"), Words.say("copy.gone.maybe")));
    }

    /** The last copy as a way to it, or none where none was kept. */
    static List<CopyView.Last> last(Workshop workshop) {
        return Backups.kept(workshop.folder()).stream()
                .limit(1)
                .map(kept -> new CopyView.Last(address(kept.name()), Words.say("backup.last", minute(kept))))
                .toList();
    }

    /** The shop's folder as it is named from anywhere. */
    static String folder(Workshop workshop) {
        return workshop.folder().toAbsolutePath().normalize().toString();
    }

    private static String address(String name) {
        return "/backup/" + name;
    }

    private static String minute(Backups.Kept kept) {
        return MINUTE.format(kept.written().atZone(ZoneId.systemDefault()));
    }
}
