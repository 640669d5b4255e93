import { graphql } from '#contracts';

export const modelsQuery = graphql(`query Models { catalogueModels { kind model itemCount data } riggingSystems rules }`);
