package withy.search;

import withy.catalog.Part;
import withy.rules.Verdict;

/**
 * A part the filter took out.
 *
 * @param part the part
 * @param why the first rule that refused it
 */
public record Refused(Part part, Verdict why) {}
