package withers.id;

import java.util.UUID;

/**
 * One attempt to import, or one run: fresh for every attempt, so that leftovers of a killed one
 * stay invisible.
 */
public record ImportId(UUID value) {
  @Override
  public String toString() {
    return value.toString();
  }
}
