package withers.source;

import withers.id.SourceId;
import withers.id.OrganisationId;

/** A source as the log knows it: whose records they are, of what kind, and what they cover. */
public record SourceDescription(
    SourceId id, OrganisationId organisation, SourceKind kind, Coverage coverage) {}
