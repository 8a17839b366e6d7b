package withers.report.mail;

/** A file that comes with a mail, or a picture on its page. Immutable. */
final class Enclosure {
  private final String name;
  private final String type;
  private final byte[] content;

  /**
   * @param name as the reader sees it; of a picture, how the page calls it, such as {@code
   *     trend-open.2026-10-01@example.org} (RFC 2392)
   * @param type its media type
   */
  Enclosure(String name, String type, byte[] content) {
    this.name = name;
    this.type = type;
    this.content = content.clone();
  }

  String name() {
    return name;
  }

  String type() {
    return type;
  }

  byte[] content() {
    return content.clone();
  }
}
