package withers.report.send;

import withers.delivery.Delivery.Step;

/**
 * What came of handing a mail over: an answer of the server, or a connection that ended without.
 *
 * @param step accepted, refused, postponed or unsure
 * @param words the server's, or what came in between: short, one line, without addresses
 * @param isLost whether the connection ended without an answer
 */
public record Answer(Step step, String words, boolean isLost) {

  /** The server's answer. */
  public static Answer of(Step step, String words) {
    return new Answer(step, words, false);
  }

  /** No answer. */
  public static Answer lost(Step step, String words) {
    return new Answer(step, words, true);
  }
}
