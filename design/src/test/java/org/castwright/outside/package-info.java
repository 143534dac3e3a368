/**
 * Checks against the outside: closed forms, standards, handbooks, papers and another library's
 * arithmetic. Accepts only what the program promises in public, mostly by running the whole job and
 * reading the files it wrote with code of its own. Each expected figure has its source beside it.
 * Does not look inside the rooms; their own tests do.
 */
package org.castwright.outside;
