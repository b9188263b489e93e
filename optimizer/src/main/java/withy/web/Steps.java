package withy.web;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.AccessDeniedException;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.FileSystemException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HexFormat;
import java.util.Iterator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import withy.app.WholeFile;

/**
 * Every step of every conversation, each a small file named by its content in the folder {@value #FOLDER} beside the lists. A file is written
 * once, so two tabs or two servers cannot spoil each other's. They are no part of the shop's memory: to look at a brief books nothing.
 */
final class Steps {
    static final String FOLDER = "drafts";

    /** Steps that are kept; beyond it the oldest quarter goes. */
    private static final int MOST = 4000;

    private static final int ID_LENGTH = 20;
    private static final Pattern ID = Pattern.compile("[0-9a-f]{" + ID_LENGTH + "}");
    private static final ObjectMapper MAPPER = new ObjectMapper();

    private final Path folder;
    private final Map<String, String> waiting = Collections.synchronizedMap(new LinkedHashMap<>());
    private volatile String trouble = "";
    private final Map<String, Step> known = Collections.synchronizedMap(new LinkedHashMap<>());

    Steps(Path lists) {
        this.folder = lists.resolve(FOLDER);
    }

    /** Keeps a step after another (or a first one, after none) and hands it out; the same again is the same step. */
    Step add(@Nullable Step parent, String said, ObjectNode brief) {
        ObjectNode file = MAPPER.createObjectNode();
        file.put("schema", 1);
        file.put("parent", parent == null ? "" : parent.id());
        file.put("said", said);
        file.set("brief", brief);
        String text = file.toString();
        Step step = new Step(hash(text), parent == null ? "" : parent.id(), said, brief.deepCopy());
        known.put(step.id(), step);
        waiting.put(step.id(), text);
        keep();
        return step;
    }

    /** Writes what is not written yet. Where that can't be, the talk goes on without: steps stay known as long as the page is open. */
    private void keep() {
        synchronized (waiting) {
            try {
                for (Iterator<Map.Entry<String, String>> all =
                                waiting.entrySet().iterator();
                        all.hasNext(); ) {
                    Map.Entry<String, String> one = all.next();
                    write(one.getKey(), one.getValue());
                    all.remove();
                }
                trouble = "";
                forget();
            } catch (IOException e) {
                trouble = Words.say("page.unkept", folder.toAbsolutePath(), reason(e));
            }
        }
    }

    private static String reason(IOException e) {
        if (e instanceof FileAlreadyExistsException) {
            return Words.say("page.unkept.file");
        }
        if (e instanceof AccessDeniedException) {
            return Words.say("page.unkept.right");
        }
        String told = e instanceof FileSystemException at ? at.getReason() : e.getMessage();
        return told == null ? e.getClass().getSimpleName() : told;
    }

    /** Why the latest steps could not be written, or empty. */
    String trouble() {
        return trouble;
    }

    /** The step of an id, or null where there is none. */
    @Nullable
    Step find(String id) {
        if (!ID.matcher(id).matches()) {
            return null;
        }
        Step step = known.get(id);
        if (step == null) {
            step = read(id);
            if (step != null) {
                known.put(id, step);
            }
        }
        return step;
    }

    /** The ends of the latest conversations, newest first: steps that no later one follows. */
    List<Step> latest(int most) {
        List<Step> ends = new ArrayList<>();
        List<String> followed = new ArrayList<>();
        List<String> ids = new ArrayList<>();
        synchronized (waiting) {
            ids.addAll(waiting.keySet());
        }
        Collections.reverse(ids);
        for (Path file : newestFirst()) {
            String name = file.getFileName().toString();
            ids.add(name.substring(0, name.length() - ".json".length()));
        }
        for (String id : ids) {
            Step step = find(id);
            if (step != null) {
                if (!followed.contains(step.id())) {
                    ends.add(step);
                }
                followed.add(step.parent());
            }
            if (ends.size() == most) {
                break;
            }
        }
        return ends;
    }

    private @Nullable Step read(String id) {
        Path file = folder.resolve(id + ".json");
        if (!Files.isRegularFile(file)) {
            return null;
        }
        try {
            String text = Files.readString(file);
            JsonNode tree = MAPPER.readTree(text);
            if (!hash(text).equals(id) || !(tree.path("brief") instanceof ObjectNode brief)) {
                return null;
            }
            return new Step(id, tree.path("parent").asText(), tree.path("said").asText(), brief);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private void write(String id, String text) throws IOException {
        Path file = folder.resolve(id + ".json");
        if (Files.exists(file)) {
            return;
        }
        Files.createDirectories(folder);
        WholeFile.write(file, text.getBytes(StandardCharsets.UTF_8));
    }

    private void forget() throws IOException {
        if (files().size() > MOST) {
            List<Path> all = newestFirst();
            for (Path old : all.subList(MOST * 3 / 4, all.size())) {
                Files.deleteIfExists(old);
            }
        }
    }

    private List<Path> newestFirst() {
        List<Path> files = new ArrayList<>(files());
        // each file is asked once when it was written, not again with every comparison
        Map<Path, Long> written = new HashMap<>();
        files.forEach(file -> written.put(file, file.toFile().lastModified()));
        files.sort(Comparator.comparing((Path file) -> written.getOrDefault(file, 0L))
                .reversed()
                .thenComparing(Comparator.naturalOrder()));
        return files;
    }

    private List<Path> files() {
        if (!Files.isDirectory(folder)) {
            return List.of();
        }
        try (Stream<Path> files = Files.list(folder)) {
            return files.filter(file -> file.toString().endsWith(".json")).toList();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static String hash(String text) {
        try {
            byte[] hash = MessageDigest.getInstance("SHA-256").digest(text.getBytes(StandardCharsets.UTF_8));
            return HexFormat.of().formatHex(hash).substring(0, ID_LENGTH);
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("this Java has no SHA-256", e);
        }
    }
}
