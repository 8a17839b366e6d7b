package withers.reconcile.cli;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Stream;
import withers.audit.Disclosed;
import withers.auditing.AuditBook;
import withers.cli.Console;
import withers.contact.Contact;
import withers.contact.ContactRef;
import withers.custody.Parties;
import withers.fact.Party;
import withers.id.ImportId;
import withers.trace.Trace;
import withers.trace.Wording;
import withers.workspace.Workspace;

/**
 * Shows a case worker the private people whom records about an animal name. That it was done, by
 * whom and why, is on the log before anything is shown.
 *
 * @param by in which role
 */
record PeopleShown(Workspace workspace, Stores stores, String by, String reason) {

  void show(Trace trace, Wording wording, Console console) {
    Set<ContactRef> named = new LinkedHashSet<>();
    trace.steps().forEach(step -> references(step).forEach(named::add));
    Map<ContactRef, Contact> found = stores.findAll(named);
    if (found.isEmpty()) {
      return;
    }
    write(found.keySet());
    console.print("");
    console.print("People whom these records name:");
    trace.steps().forEach(step -> tell(step, found, wording, console));
  }

  private static Stream<ContactRef> references(Trace.Step step) {
    return Parties.of(step.statement().fact())
        .filter(Party.Contact.class::isInstance)
        .map(party -> ((Party.Contact) party).reference());
  }

  private void write(Set<ContactRef> shown) {
    Disclosed disclosed =
        new Disclosed(workspace.today(), by, reason, "trace", shown.stream().sorted().toList());
    workspace.whileLocked(
        "trace",
        () -> {
          new AuditBook(stores.log(), workspace.clock(), () -> new ImportId(UUID.randomUUID()))
              .write(disclosed);
          return disclosed;
        });
  }

  private static void tell(
      Trace.Step step, Map<ContactRef, Contact> found, Wording wording, Console console) {
    references(step)
        .flatMap(reference -> Optional.ofNullable(found.get(reference)).stream())
        .forEach(contact -> console.print("  " + line(step, contact, wording)));
  }

  private static String line(Trace.Step step, Contact contact, Wording wording) {
    return "%s  %s, by %s: %s"
        .formatted(
            step.statement().day(), step.says(), wording.name(step.saidBy()), details(contact));
  }

  private static String details(Contact contact) {
    List<String> parts = new ArrayList<>();
    parts.add(contact.fullName());
    parts.addAll(contact.phones());
    parts.addAll(contact.emails());
    parts.removeIf(String::isBlank);
    // What a source wrote must not move the terminal's cursor, nor turn its text around.
    return String.join(", ", parts).replaceAll("[\\s\\p{C}]+", " ");
  }
}
