package withers.reconcile.cli;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import withers.cli.Progress;
import withers.contact.Contact;
import withers.contact.ContactRef;
import withers.matching.Calibration;
import withers.matching.Matcher;
import withers.matching.Parameters;
import withers.matching.ParametersWriter;
import withers.matching.Pattern;
import withers.matching.form.NormalForm;
import withers.matching.form.NormalForms;
import withers.workspace.OwnerOnly;
import withers.workspace.Workspace;

/** Calibrates matching on a workspace's contacts. */
record Calibrator(Workspace workspace) {

  private static final List<String> REMARKS =
      List.of(
          "Parameters of matching, estimated by \"withers calibrate\" from this workspace's contacts.",
          "docs/matching.md says what they mean. Prior and costs are the built-in ones.");

  /**
   * Reads, counts and estimates.
   *
   * @throws withers.source.InputRefusedException when nothing was imported yet
   */
  Calibration.Result calibrate(Progress progress) {
    try (Stores stores = Stores.open(workspace)) {
      ContactPairs pairs = ContactPairs.read(stores.log().snapshot(), () -> progress.advance(1));
      Map<ContactRef, NormalForm> forms = forms(pairs, stores);
      return new Calibration(Parameters.builtIn())
          .calibrate(
              counts(pairs.random(), forms),
              counts(pairs.candidates(), forms),
              "calibrated " + workspace.today());
    }
  }

  private Map<ContactRef, NormalForm> forms(ContactPairs pairs, Stores stores) {
    Set<ContactRef> wanted = new HashSet<>();
    pairs.candidates().forEach(two -> two.addTo(wanted));
    pairs.random().forEach(two -> two.addTo(wanted));
    NormalForms forms = new NormalForms(workspace.settings().phoneRegion());
    Map<ContactRef, NormalForm> made = new HashMap<>();
    Map<ContactRef, Contact> found = stores.findAll(wanted);
    found.forEach((reference, contact) -> made.put(reference, forms.of(contact)));
    return made;
  }

  /** Forgotten contacts have no form, and their pairs don't count. */
  private static Map<Pattern, Double> counts(
      List<ContactPairs.Two> pairs, Map<ContactRef, NormalForm> forms) {
    Matcher matcher = Matcher.builtIn();
    Map<Pattern, Double> counts = new HashMap<>();
    for (ContactPairs.Two two : pairs) {
      NormalForm one = forms.get(two.one());
      NormalForm other = forms.get(two.other());
      if (one != null && other != null) {
        counts.merge(matcher.pattern(one, other), 1.0, Double::sum);
      }
    }
    return counts;
  }

  /**
   * Writes parameters, whole or not at all.
   *
   * @param name within the workspace
   * @return the file
   */
  Path write(Parameters parameters, Path name) {
    Path file = workspace.paths().root().resolve(name);
    try {
      String text = ParametersWriter.write(parameters, REMARKS);
      OwnerOnly.replace(file, text.getBytes(StandardCharsets.UTF_8));
      return file;
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
