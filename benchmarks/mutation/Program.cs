using Simfeel.Mutation;

// benchmarks/mutation.sh says how this is used.
return args switch
{
    ["host-cover", string folder, string project, string results, .. string[] leftOut] => HostRuns.Cover(folder, project, results, leftOut),
    ["host-mutate", string folder, string project, string plan, string results] => HostRuns.Mutate(folder, project, plan, results),
    ["run", string root, string project, .. string[] rest] => new Campaign(root, project).Run(rest),
    ["table", string root, string project] => MutationTable.Write(root, project),
    _ => throw new ArgumentException("mutation run ROOT PROJECT [--sample N] [--price MS] [--again] [FILE...] | mutation table ROOT PROJECT"),
};
