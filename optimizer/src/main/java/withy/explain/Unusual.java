package withy.explain;

import java.util.List;
import java.util.Objects;
import org.jspecify.annotations.Nullable;
import withy.brief.Brief;
import withy.catalog.Part;
import withy.catalog.Rates;

/** What the shop leaves out of its rods unless it is asked for by name, though no rule is against it. */
final class Unusual {
    private Unusual() {}

    /** What the shop takes instead of a part, in words; null where the part is taken without being asked for. */
    static @Nullable String instead(Inquiry inquiry, Part part) {
        Brief brief = inquiry.brief();
        Rates rates = inquiry.catalog().rates();
        boolean asked = brief.insisted().stream().anyMatch(wish -> wish.partId().equals(part.id()));
        if (asked || rates.usual(part, brief.rodType())) {
            return null;
        }
        String type = Phrases.of("unusual.rods." + HandleDemands.word(brief.rodType()));
        List<String> letters = Objects.requireNonNullElse(rates.threadLetters().get(brief.rodType()), List.of());
        return switch (part.kind()) {
            case THREAD -> Phrases.of("unusual.thread", type, Phrases.either(letters));
            case FINISH -> Phrases.of("unusual.finish", inquiry.name(rates.houseFinish()));
            case ADHESIVE -> Phrases.of("unusual.adhesive", inquiry.name(rates.houseAdhesive()));
            default -> Phrases.of("unusual.blank", type);
        };
    }

    /** What is said of a part, and where it is left out unless asked for, that. */
    static String added(Inquiry inquiry, @Nullable Part part, String said) {
        String instead = part == null ? null : instead(inquiry, part);
        return instead == null ? said : Phrases.of("unusual.added", said, instead);
    }
}
