package withy.web;

import gg.jte.html.OwaspHtmlTemplateOutput;
import gg.jte.output.StringOutput;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import withy.report.Unbroken;

/** Writes a template so that no line breaks between a number and its unit; values of attributes and what can be typed over stay as they are. */
final class Lines extends OwaspHtmlTemplateOutput {
    /** Elements whose text is a value, or is read by machine. */
    private static final Set<String> AS_THEY_ARE = Set.of("textarea", "option", "title", "script", "style");

    private boolean read;

    Lines(StringOutput out) {
        super(out);
    }

    @Override
    public void setContext(String tag, @Nullable String attribute) {
        read = attribute == null && !AS_THEY_ARE.contains(tag);
        super.setContext(tag, attribute);
    }

    @Override
    public void writeUserContent(@Nullable String words) {
        super.writeUserContent(read && words != null ? Unbroken.of(words) : words);
    }
}
