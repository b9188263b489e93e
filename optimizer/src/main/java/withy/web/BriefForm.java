package withy.web;

import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.regex.Pattern;
import withy.brief.Brief;
import withy.brief.BriefFault;
import withy.brief.BriefFault.Notation;
import withy.brief.BriefWriter;
import withy.web.Bench.Asked;
import withy.web.BriefView.CountView;
import withy.web.BriefView.FieldView;
import withy.web.BriefView.Option;
import withy.web.BriefView.QuestionView;
import withy.web.Field.Kind;
import withy.web.Questions.Question;

/** Lays a brief out as a conversation. */
final class BriefForm {
    private static final Pattern TWO = Pattern.compile("\"?\\d.*(?:\\bto\\b|\\bor\\b|[-–])\\s*\\d.*");

    private final Bench bench;
    private final ObjectNode typed;
    private final Asked asked;
    private final Usual usual;
    private final Map<String, String> faults = new LinkedHashMap<>();
    private final List<String> others = new ArrayList<>();

    BriefForm(Bench bench, ObjectNode typed, Asked asked) {
        this.bench = bench;
        this.typed = typed;
        this.asked = asked;
        Brief brief = asked.brief();
        ObjectNode resolved = BriefWriter.write(
                brief != null
                        ? brief
                        : bench.read(JsonNodeFactory.instance.objectNode()).told());
        this.usual = new Usual(resolved, bench.units(), bench.currency());
        sortFaults();
    }

    /** Each fault to the field that is to blame. */
    private void sortFaults() {
        List<Field> fields = Questions.fields();
        for (BriefFault fault : asked.faults()) {
            String path = fault.path();
            fields.stream()
                    .filter(field -> blamed(field, path))
                    .findFirst()
                    .ifPresentOrElse(
                            field -> faults.merge(field.path(), told(field, fault), (a, b) -> a + " " + b),
                            () -> others.add(fault.message()));
        }
    }

    private String told(Field field, BriefFault fault) {
        boolean two = field.kind() == Kind.AMOUNT && TWO.matcher(fault.value()).matches();
        String words = two
                ? Words.say("brief.one", fault.value())
                : Words.say("brief.fault", fault.value(), allowed(fault)) + " " + maybe(fault);
        String right = usual.of(field);
        boolean example = right.chars().anyMatch(Character::isDigit);
        return words.strip() + (example && (two || maybe(fault).isEmpty()) ? " " + Words.say("brief.such", right) : "");
    }

    /** What may stand in a field, without a word of how a file would have it. */
    private static String allowed(BriefFault fault) {
        return (fault.notation().contains(Notation.UNIT) ? Words.say("brief.unit") + ", " : "")
                + fault.plain()
                + (fault.notation().contains(Notation.RANGE) ? Words.say("brief.two") : "");
    }

    private static String maybe(BriefFault fault) {
        return fault.notation().contains(Notation.HINT) ? "" : fault.maybe();
    }

    /** A fault in words, with the question and the field it stands in as the page calls them. */
    static String told(BriefFault fault) {
        for (Question question : Questions.ALL) {
            for (Field field : question.fields()) {
                if (blamed(field, fault.path())) {
                    return Words.say(
                                    "count.fault",
                                    Words.say("ask." + question.key()),
                                    Words.say("field." + field.path()),
                                    fault.value(),
                                    allowed(fault),
                                    maybe(fault))
                            .strip();
                }
            }
        }
        return fault.message();
    }

    private static boolean blamed(Field field, String path) {
        String twin = field.parent().isEmpty() ? field.twin() : field.parent() + "." + field.twin();
        boolean own = path.equals(field.path())
                || path.startsWith(field.path() + ".")
                || path.startsWith(field.path() + "[")
                || path.equals(twin)
                || path.startsWith(twin + ".");
        boolean whole = !field.parent().isEmpty() && path.equals(field.parent());
        boolean line = (field.kind() == Kind.LINE || field.kind() == Kind.LEADER)
                && path.matches(field.parent() + "\\.(gauge|strength|strengthKg|diameter|diameterMm)");
        return own || whole || line;
    }

    BriefView view(Frame frame, String from, String start, String intro, CountView count) {
        List<QuestionView> questions = new ArrayList<>();
        for (Question question : Questions.ALL) {
            List<FieldView> first = question.first().stream().map(this::field).toList();
            List<FieldView> more = question.more().stream().map(this::field).toList();
            boolean open = more.stream()
                    .anyMatch(f -> !f.value().isEmpty() || !f.fault().isEmpty());
            questions.add(new QuestionView(question.key(), Words.say("ask." + question.key()), first, more, open));
        }
        Brief brief = asked.brief();
        return new BriefView(
                frame,
                from,
                start,
                intro,
                questions,
                Questions.PRIORITIES.stream().map(this::field).toList(),
                others,
                !asked.faults().isEmpty(),
                brief == null ? List.of() : brief.defaultsUsed(),
                brief == null ? List.of() : parts(brief),
                count);
    }

    private List<String> parts(Brief brief) {
        List<String> lines = new ArrayList<>();
        brief.insisted()
                .forEach(wish ->
                        lines.add(Words.say("brief.keeps", bench.workshop().name(wish.partId()))));
        brief.refused()
                .forEach(wish ->
                        lines.add(Words.say("brief.refuses", bench.workshop().name(wish.partId()))));
        brief.owned()
                .forEach(part ->
                        lines.add(Words.say("brief.owns", bench.workshop().name(part))));
        return lines;
    }

    FieldView field(Field field) {
        String value = Typed.read(typed, field, bench.currency());
        String shown = field.kind() == Kind.WEIGHT && value.isEmpty() ? usual.of(field) : value;
        return new FieldView(
                field.path(),
                kind(field),
                Words.say("field." + field.path()),
                shown,
                usual.of(field),
                options(field, value),
                faults.getOrDefault(field.path(), ""),
                field.kind() == Kind.WISH && Typed.hard(typed, field));
    }

    private static String kind(Field field) {
        return switch (field.kind()) {
            case CHOICE -> "choice";
            case WISH -> "wish";
            case SOME -> "some";
            case WEIGHT -> "weight";
            default -> "text";
        };
    }

    private static List<Option> options(Field field, String value) {
        List<String> chosen = List.of(value.split(" ", -1));
        List<Option> options = new ArrayList<>();
        for (String choice : field.choices()) {
            String key = field.kind() == Kind.SOME ? "material." + choice : "choice." + field.path() + "." + choice;
            options.add(new Option(choice, Words.say(key), chosen.contains(choice)));
        }
        boolean known =
                value.isEmpty() || field.choices().isEmpty() || field.choices().containsAll(chosen);
        if (!known) {
            for (String other : chosen) {
                if (!field.choices().contains(other)) {
                    options.add(new Option(other, other, true));
                }
            }
        }
        return options;
    }
}
