package withers.sqlite;

/**
 * What stands around bringing a file of an older format up to this program's: what has to be done
 * before, and who may not write meanwhile.
 */
@FunctionalInterface
public interface Upgrading {

  /** Nothing: for a copy whose original stays. */
  Upgrading AT_ONCE = Outdated::bringUp;

  /** Files of an older format are not brought up: they stay as they are, and can't be used. */
  Upgrading REFUSED =
      file -> {
        throw file.refusal();
      };

  /**
   * Has the file brought up, or throws before anything of it has changed.
   *
   * @param file not in use by the caller's thread otherwise
   */
  void around(Outdated file);

  /** A file of an older format that is about to be opened. */
  interface Outdated {

    /** What people call it: "event log". */
    String what();

    /** Its format, from 1. */
    int from();

    /** The format that this program writes. */
    int to();

    /** Whether it still is of an older format: another program may have brought it up meanwhile. */
    boolean isStill();

    /** Brings it up, whole or not at all. */
    void bringUp();

    /** The exception that says that it has to be brought up first. */
    RuntimeException refusal();
  }
}
