package withers.trace;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Collectors;
import withers.contact.Contact;
import withers.fact.Species;
import withers.id.OrganisationId;
import withers.organisation.Organisation;
import withers.trace.Trace.Step;

/** A trace as lines of text. */
public final class TraceText {
  private final Wording wording;
  private final List<String> lines = new ArrayList<>();

  private TraceText(Wording wording) {
    this.wording = wording;
  }

  /** The lines to show. */
  public static List<String> of(Trace trace, Wording wording) {
    TraceText text = new TraceText(wording);
    text.write(trace);
    return List.copyOf(text.lines);
  }

  private void write(Trace trace) {
    lines.add(title(trace));
    trace.call().ifPresent(this::call);
    section("In doubt", trace.doubts());
    section("What the records say", trace.steps().stream().map(this::step).toList());
    section("Live registrations", trace.registrations().stream().map(this::registered).toList());
    section("Supplied", trace.supplied().stream().map(this::supply).toList());
    section(
        "Known numbers one slip away", trace.oneSlipAway().stream().map(Object::toString).toList());
    section(
        "Registries that may hold the number", trace.mayHold().stream().map(this::reach).toList());
    if (!trace.isKnown()) {
      section("What to do", Cautions.UNKNOWN);
    }
    section("Mind", Cautions.ALL);
  }

  private void section(String title, List<String> content) {
    if (!content.isEmpty()) {
      lines.add("");
      lines.add(title + ":");
      content.forEach(line -> lines.add("  " + line));
    }
  }

  private static String title(Trace trace) {
    if (trace.isSilent()) {
      return trace.number() + ": nothing is told of this number here.";
    }
    if (!trace.isKnown()) {
      return "No record speaks of " + trace.number() + ".";
    }
    String others =
        trace.chips().stream()
            .filter(chip -> !chip.equals(trace.number()))
            .map(chip -> ", also " + chip)
            .collect(Collectors.joining());
    return trace.number() + others + animal(trace);
  }

  private static String animal(Trace trace) {
    String name = trace.name().map(known -> ": " + known).orElse("");
    boolean isStated = trace.species() != Species.UNSTATED;
    return name + (isStated ? " (" + trace.species().name().toLowerCase(Locale.ROOT) + ")" : "");
  }

  private void call(Trace.Call call) {
    lines.add("");
    lines.add("Call next: %s: %s.".formatted(reach(call.organisation()), call.why()));
  }

  private String step(Step step) {
    return "%s  %s  [%s, record %s, first stated %s]"
        .formatted(
            step.statement().day(),
            step.says(),
            wording.name(step.saidBy()),
            step.statement().key(),
            step.statement().firstStated());
  }

  private String registered(Trace.Registered one) {
    return "%s with %s since %s: %s"
        .formatted(one.chip(), wording.name(one.registry()), one.day(), wording.who(one.primary()));
  }

  private String supply(Trace.Supply supply) {
    return "%s to %s, to %s on %s%s"
        .formatted(
            supply.range().first(),
            supply.range().last(),
            wording.who(supply.purchaser()),
            supply.day(),
            supply.prepaid() ? ", registration prepaid" : "");
  }

  /** An organisation's name and how to reach it, as the directory publishes it. */
  private String reach(OrganisationId id) {
    Optional<Contact> contact = wording.directory().find(id).map(Organisation::contact);
    String ways =
        contact.stream()
            .flatMap(c -> java.util.stream.Stream.concat(c.phones().stream(), c.emails().stream()))
            .collect(Collectors.joining(", "));
    return ways.isEmpty() ? wording.name(id) : "%s (%s)".formatted(wording.name(id), ways);
  }
}
