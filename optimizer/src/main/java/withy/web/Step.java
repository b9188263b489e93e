package withy.web;

import com.fasterxml.jackson.databind.node.ObjectNode;

/**
 * One state of a conversation; never changed, only followed by another. Its id is in the address of every page about it, so that reload, back
 * button and a second tab show what they showed.
 *
 * @param id hash of all the rest
 * @param parent id of the step before, or empty
 * @param said what was changed against that, in words
 * @param brief the brief as typed
 */
record Step(String id, String parent, String said, ObjectNode brief) {}
