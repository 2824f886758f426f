use studbook::{job, resolve, calc, rules, report::Sources, document::build::*, document::card::Cards, typeset};
use std::collections::BTreeMap;
#[test]
fn scratch() {
    let path = std::env::var("JOB").unwrap_or("jobs/effluent-cooler.yaml".into());
    let bytes = std::fs::read(&path).unwrap();
    let mut sources = Sources::default();
    let (job, f) = job::open(&path, &bytes, &mut sources);
    for x in &f { println!("{:?} {} {:?}", x.place.map(|p| (p.line,p.column)), x.id, x.values); }
    let job = job.unwrap();
    let (joints, f) = resolve::resolve(&job);
    for x in &f { println!("{:?} {} {:?}", x.place.map(|p| (p.line,p.column)), x.id, x.values); }
    let plan = calc::Plan::new(&joints);
    let s = rules::Subject::new(&job, &joints, &plan, &[]);
    let findings = rules::check(&s);
    for x in &findings { println!("{:?} {:?} {} {:?} {:?}", x.place.map(|p| (p.line,p.column)), x.severity, x.id, x.joint, x.values); }
    let wording = studbook::wording::Wording::embedded("en").map_err(|e| panic!("{e:?}")).unwrap();
    let context = Context::new(&job, &joints, &plan, &findings, &wording).with_draft(false);
    let mut cards = vec![];
    for (i, joint) in joints.iter().enumerate() {
        let group = plan.of(i).unwrap();
        let subject = Subject { joint, computed: &group.computed, group: &group.name };
        cards.push(tightening_card(&context, &subject, vec![]).content);
        cards.push(loosening_card(&context, &subject, vec![]).content);
    }
    for f in context.faults() { println!("FAULT {f}"); }
    let data = Cards { language: "en".into(), cards };
    let overrides = BTreeMap::new();
    let request = typeset::Request { template: "cards.typ", data: serde_json::to_vec(&data).unwrap(), files: BTreeMap::new(), overrides: &overrides,
        properties: typeset::Properties { title: "x".into(), author: vec![], keywords: vec![], date: typeset::Date { year: 2027, month: 3, day: 8 }, ident: "x".into() }, tagged: false };
    match typeset::make_pdf(&request) { Ok(pdf) => { println!("{} pages", pdf.pages); std::fs::write("/tmp/w/cards.pdf", pdf.bytes).unwrap(); }, Err(e) => println!("{e:?}") }
}
