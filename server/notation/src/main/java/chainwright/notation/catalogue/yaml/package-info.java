/**
 * Reads the catalogue's YAML and writes its compact form while the project is built; not shipped.
 */
@NullMarked
package chainwright.notation.catalogue.yaml;

import org.jspecify.annotations.NullMarked;
