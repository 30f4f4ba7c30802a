/**
 * Files that people write, in TOML: reading them, and telling their author everything that is wrong in one go.
 *
 * <p>Belongs here: what any such file needs, whatever it says. Does not belong here: a key of any one of them.
 */
package org.cupbeam.rig.file;
