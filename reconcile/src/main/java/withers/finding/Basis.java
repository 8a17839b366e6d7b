package withers.finding;

import java.time.LocalDate;
import java.util.List;

/**
 * What a run was made with, beside the exports: two runs of the same exports that differ, differ in
 * one of these. Digests are SHA-256 in lower-case hexadecimal.
 *
 * @param rules digest of the code that judges; empty when it could not be read
 * @param matching what the parameters of matching are called
 * @param matchingDigest digest of the parameters
 * @param forms what contacts are compared by was made by this; empty when it could not be read
 * @param settings digest of the settings and of the directory's entries
 * @param profiles in the order of their sources' ids
 */
public record Basis(
    String rules,
    String matching,
    String matchingDigest,
    String forms,
    String settings,
    List<Profile> profiles) {
  private static final int SHORT = 12;

  /**
   * The profile with which a source's newest export was read.
   *
   * @param digest of the profile; empty when it is not known
   */
  public record Profile(String source, LocalDate exportDate, String digest) {}

  public Basis {
    profiles = List.copyOf(profiles);
  }

  /** In sentences, digests shortened. */
  public List<String> lines() {
    List<String> lines = new java.util.ArrayList<>();
    lines.add("rules " + cut(rules));
    lines.add("parameters of matching %s, %s".formatted(matching, cut(matchingDigest)));
    lines.add("contacts read by " + (forms.isEmpty() ? "code that could not be read" : forms));
    lines.add("settings and organisations " + cut(settings));
    profiles.forEach(
        one ->
            lines.add(
                "profile of %s %s, export of %s"
                    .formatted(one.source(), cut(one.digest()), one.exportDate())));
    return lines;
  }

  private static String cut(String digest) {
    return digest.isEmpty() ? "unknown" : digest.substring(0, Math.min(SHORT, digest.length()));
  }
}
