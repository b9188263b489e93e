/**
 * The bench page: the whole job in a browser on this machine, server-rendered. May import everything but cli; javalin and jte are at home here.
 */
@NullMarked
package withy.web;

import org.jspecify.annotations.NullMarked;
