import { useQuery } from '@tanstack/react-query';
import { Link } from 'react-router';
import { graphql } from '#contracts';
import { request } from '../../platform/request.js';
import { Loaded, Page } from '../../ui/page.js';
import { type Step, stepsOf } from './steps.js';

const beginningQuery = graphql(`
  query Beginning {
    beginningOfHouse {
      officers warehouse examinationRules loadRules systems approvedSystems models { kind count } items { kind count } waiting tours hangs plans
    }
  }
`);

/** From an empty house to a first plan: what is missing, in order. */
export function Begin() {
  const query = useQuery({ queryKey: ['beginning'], queryFn: () => request(beginningQuery) });
  return (
    <Page
      title="To a first plan"
      lede="What your company needs on file, in order. Each step is a form or a file; nothing is made up for you."
    >
      <Loaded query={query}>
        {({ beginningOfHouse }) => {
          const steps = stepsOf(beginningOfHouse);
          const next = steps.findIndex((each) => !each.isDone);
          return (
            <ol className="begin">
              {steps.map((step, index) => (
                <StepLine key={step.title} step={step} isNext={index === next} />
              ))}
            </ol>
          );
        }}
      </Loaded>
    </Page>
  );
}

function StepLine({ step, isNext }: { step: Step; isNext: boolean }) {
  return (
    <li aria-current={isNext ? 'step' : undefined}>
      <h2>{step.title}</h2>
      <p>
        <b>{step.isDone ? '○ there' : isNext ? '■ next' : '■ missing'}</b> {step.stands}
      </p>
      <p className="row">
        {step.ways.map((way) => (
          <Link key={way.to} className={isNext ? 'btn' : 'btn plain'} to={way.to}>
            {way.word}
          </Link>
        ))}
        <span className="quiet">by the {step.by}</span>
      </p>
    </li>
  );
}
