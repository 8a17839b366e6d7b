package withers.ingest.pack;

import java.util.Locale;
import withers.source.InputRefusedException;

/** What is said about packed files that can't be taken. */
final class PackRefusals {

  private PackRefusals() {}

  static InputRefusedException damaged(String name, Exception cause) {
    InputRefusedException refused =
        refused("a whole file", "it cut off or damaged", name, "ask for it again");
    refused.initCause(cause);
    return refused;
  }

  static InputRefusedException tooLarge(String name, long bytes) {
    return refused(
        "at most %,d GB when unpacked".formatted(bytes >> 30),
        "more",
        name,
        "have it exported in several files");
  }

  static InputRefusedException tooDense(String name, int ratio) {
    return refused(
        "a file that is at most %d times as large when unpacked".formatted(ratio),
        "more, as in files made to fill up a disk or a memory",
        name,
        "ask who sent it; if it is an export, have it sent unpacked");
  }

  static InputRefusedException tooManyEntries(String name, int most, int found) {
    return refused(
        String.format(Locale.ROOT, "an archive with at most %,d entries", most),
        String.format(Locale.ROOT, "%,d", found),
        name,
        "have the exports sent in several archives");
  }

  static InputRefusedException noEntries(String name) {
    return refused(
        "an archive that holds exports", "none in it", name, "ask for the exports again");
  }

  static InputRefusedException encrypted(String name) {
    return refused(
        "an archive without a password",
        "one with a password",
        name,
        "unpack it with the password, and give what it holds");
  }

  static InputRefusedException unreadable(String name) {
    return refused(
        "an entry packed in a common way (deflate)",
        "another",
        name,
        "unpack it, and give what it holds");
  }

  static InputRefusedException link(String name) {
    return refused("an export", "a link to a file", name, "have the archive made with the files");
  }

  static InputRefusedException nested(String name) {
    return refused(
        "an export in the archive",
        "another archive",
        name,
        "unpack the outer one, and give what it holds");
  }

  static InputRefusedException tooLargeForMemory(String name, int megabytes) {
    return refused(
        "a packed spreadsheet of at most %d MB".formatted(megabytes),
        "more",
        name,
        "unpack it, and give the spreadsheet itself");
  }

  static InputRefusedException openDocument(String name) {
    return spreadsheet("an OpenDocument file", name);
  }

  static InputRefusedException otherDocument(String name) {
    return spreadsheet("a document that is no spreadsheet", name);
  }

  static InputRefusedException compound(String name, boolean encrypted) {
    return encrypted
        ? refused(
            "a spreadsheet without a password",
            "one with a password",
            name,
            "open it with the password, and save it as .xlsx without one, or as CSV")
        : spreadsheet("an old spreadsheet (.xls)", name);
  }

  private static InputRefusedException spreadsheet(String found, String name) {
    return refused(
        "CSV or a spreadsheet in the form of .xlsx",
        found,
        name,
        "open it, and save it as .xlsx or as CSV");
  }

  static InputRefusedException refused(String expected, String found, String place, String advice) {
    return new InputRefusedException(
        "Expected %s, but found %s (%s): %s. Nothing was changed."
            .formatted(expected, found, place, advice));
  }
}
