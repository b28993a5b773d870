using Simfeel.CommandLine;

return CommandLineApp.Run(args);
