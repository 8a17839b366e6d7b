package withers.reconcile.cli;

import java.io.IOException;
import java.util.Optional;
import withers.matching.form.NormalForms;

/**
 * What tells one maker of normal forms from another that might read a contact otherwise: the
 * region, this Java (whose tables of Unicode take part), the names of the libraries' files, which
 * state their versions, and a digest of the code and the word lists.
 */
final class NormaliserStamp {

  private NormaliserStamp() {}

  /**
   * The stamp of this program's maker.
   *
   * @param region whose rules read a phone without a country code
   * @return empty when the program's own code can't be read
   */
  static Optional<String> of(String region) {
    try {
      String java = "java " + Runtime.version().feature();
      return Optional.of(
          String.join(
              "; ", region, java, libraries(), "code " + CodeDigest.of(NormalForms.code())));
    } catch (IOException unreadable) {
      return Optional.empty();
    }
  }

  private static String libraries() throws IOException {
    StringBuilder names = new StringBuilder();
    for (Class<?> one : NormalForms.libraries()) {
      names.append(names.isEmpty() ? "" : ", ").append(CodeDigest.origin(one).getFileName());
    }
    return names.toString();
  }
}
