package withers.codec;

import withers.log.LogDamagedException;

/** Words for a version that this program can't read. */
final class Versions {

  private Versions() {}

  static LogDamagedException unknown(Family<?> family, Shape<?> shape, long version) {
    return new LogDamagedException(
        "Expected version 1 to %d of the %s '%s', but found version %s: a newer program wrote it; use that one"
            .formatted(
                shape.version(), family.name(), shape.name(), Long.toUnsignedString(version)));
  }
}
