package withy.brief;

import java.util.Locale;
import withy.catalog.Material;

/**
 * How the constants of enums are written in briefs: lower camel case, {@code SURF_SPINNING} as {@code surfSpinning}; materials as in the
 * catalogue's files, {@code rubber-cork}.
 */
final class Words {
    private Words() {}

    static String of(Enum<?> constant) {
        if (constant instanceof Material material) {
            return material.word();
        }
        StringBuilder word = new StringBuilder();
        boolean capital = false;
        for (char c : constant.name().toLowerCase(Locale.ROOT).toCharArray()) {
            if (c == '_') {
                capital = true;
            } else {
                word.append(capital ? Character.toUpperCase(c) : c);
                capital = false;
            }
        }
        return word.toString();
    }

    /** The same as it is spoken: {@code SURF_SPINNING} as "surf spinning"; names of two letters stay as they are. */
    static String spoken(Enum<?> constant) {
        String name = constant.name();
        return name.length() > 2 ? name.toLowerCase(Locale.ROOT).replace('_', ' ') : name;
    }
}
