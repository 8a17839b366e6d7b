package withers.corpus;

import java.util.List;
import java.util.function.UnaryOperator;

/**
 * An address as it is written.
 *
 * @param building the building that is meant, or empty when only the town is written
 * @param flat the flat that is written, or empty
 */
record WrittenAddress(
    Home home,
    String building,
    String flat,
    List<String> lines,
    String postcode,
    String town,
    String country) {

  WrittenAddress lines(List<String> other) {
    return new WrittenAddress(home, building, flat, other, postcode, town, country);
  }

  WrittenAddress postcode(String other) {
    return new WrittenAddress(home, building, flat, lines, other, town, country);
  }

  WrittenAddress withoutFlat() {
    return new WrittenAddress(home, building, "", List.of(home.line()), postcode, town, country);
  }

  WrittenAddress townOnly() {
    return new WrittenAddress(home, "", "", List.of(), "", town, country);
  }

  WrittenAddress texts(UnaryOperator<String> change) {
    List<String> changed = lines.stream().map(change).toList();
    return new WrittenAddress(home, building, flat, changed, postcode, change.apply(town), country);
  }

  /** Whether both mean one door, as far as they say. */
  boolean meets(WrittenAddress other) {
    boolean oneFlat = flat.isEmpty() || other.flat.isEmpty() || flat.equals(other.flat);
    return !building.isEmpty() && building.equals(other.building) && oneFlat;
  }
}
