//! What commands print.

ids! {
    cli {
        CHECK_CLEAN = "check.clean";
        CHECK_FOUND = "check.found";
        CHECK_JOB_FAULTS = "check.job_faults";
        CHECK_MORE = "check.more";
        ISSUE_WROTE = "issue.wrote";
        ISSUE_COPIED = "issue.copied";
        ISSUE_DRAFT = "issue.draft";
        ISSUE_NOTHING = "issue.nothing";
        ISSUE_EXISTS = "issue.exists";
        ISSUE_EXISTS_FIX = "issue.exists_fix";
        ISSUE_MOVED = "issue.moved";
        ISSUE_FOLDER_FAULT = "issue.folder_fault";
        ISSUE_OVERRUN = "issue.overrun";
        ISSUE_INTERRUPTED = "issue.interrupted";
        PROGRESS_READING = "progress.reading";
        PROGRESS_COMPUTING = "progress.computing";
        PROGRESS_CARDS = "progress.cards";
        PROGRESS_VOLUMES = "progress.volumes";
        PROGRESS_WRITING = "progress.writing";
        NEW_WROTE = "new.wrote";
        NEW_EXISTS = "new.exists";
        SHOW_RESULT = "show.result";
        SHOW_VALUE = "show.value";
        SHOW_UNIT = "show.unit";
        SHOW_SOURCE = "show.source";
        SHOW_MISSING = "show.missing";
        SHOW_NO_SUCH_TAG = "show.no_such_tag";
        RULE_UNKNOWN = "rule.unknown";
        RULE_NEAR = "rule.near";
        RULE_SEVERITY = "rule.severity";
        RULE_CONDITION = "rule.condition";
        RULE_WHY = "rule.why";
        RULE_FIX = "rule.fix";
        RULE_SOURCE = "rule.source";
        RULE_LIST = "rule.list";
        TEMPLATES_WROTE = "templates.wrote";
        FILES_MISSING = "files.missing";
        FILES_UNREADABLE = "files.unreadable";
    }
}
